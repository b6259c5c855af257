// The bodies of a picture: every balloon, and what of it is shown how.
import { type Pose, place, type Spot } from "./camera";
import type { Piece, Point } from "./data";
import { add, times } from "./vector";

// new: outlined, in its colour; own: in its colour; done: pale; gone: not drawn; clear: seen
// through, for it is tied where hands work and stands before what is new
export type Look = "new" | "own" | "done" | "gone" | "clear" | "picked";
const NEAR = 0.8; // of what is seen across: what is farther from the work is left out

export interface Body {
  name: string; // a link, or the joint of a lock
  isLink: boolean;
  ends: readonly string[];
  balloon: number;
  first: Point;
  second: Point;
  middle: Point;
  radius: number;
  moment: number;
  held: number;
}

/** What a picture shows: at which moment, what is new, and what is pointed at. */
export interface Shown {
  moment: number;
  isNew: (body: Body) => boolean;
  picked: ReadonlySet<Body>;
  near: { about: Point; across: number; joints: ReadonlySet<string> } | null; // close by: nothing covers what is new
  inColour?: boolean; // what stands is not pale
}

export function bodiesOf(piece: Piece): Body[] {
  const at = new Map(piece.joints.map((joint) => [joint.label, joint.at]));
  const number = new Map(piece.balloons.map((balloon, i) => [balloon.key, i]));
  const links = piece.links.map((link): Body => {
    const first = at.get(link.start) ?? [0, 0, 0];
    const second = at.get(link.finish) ?? [0, 0, 0];
    const balloon = number.get(link.balloon) ?? 0;
    return {
      name: link.id,
      isLink: true,
      ends: [link.start, link.finish],
      balloon,
      first,
      second,
      middle: times(add(first, second), 0.5),
      radius: (piece.balloons[balloon]?.gauge_m ?? 0) / 2,
      moment: link.moment,
      held: link.held,
    };
  });
  const locks = piece.locks.flatMap((lock) =>
    lock.at.map((middle): Body => {
      const balloon = number.get(lock.balloon) ?? 0;
      const radius = (piece.balloons[balloon]?.gauge_m ?? 0) / 2;
      return {
        name: lock.joint,
        isLink: false,
        ends: [lock.joint],
        balloon,
        first: add(middle, [0, -radius, 0]),
        second: add(middle, [0, radius, 0]),
        middle,
        radius,
        moment: lock.moment,
        held: lock.moment,
      };
    }),
  );
  return [...links, ...locks];
}

/** How each body looks; what stands and would cover new work is gone. */
export function looks(
  bodies: readonly Body[],
  shown: Shown,
  from: Pose,
): Look[] {
  const found = bodies.map((body): Look => {
    if (body.moment > shown.moment) return "gone";
    if (shown.picked.has(body)) return "picked";
    return shown.isNew(body) ? "new" : shown.inColour ? "own" : "done";
  });
  const { near } = shown;
  if (!near) return found;
  const wanted: [Spot, number][] = [];
  found.forEach((look, i) => {
    const body = bodies[i];
    if (body && (look === "new" || look === "picked")) {
      const spot = place(from, body.middle);
      wanted.push([spot, body.radius * spot.scale]);
    }
  });
  return found.map((look, i) => {
    const body = bodies[i];
    if (look !== "done" || !body) return look;
    const [x, y, z] = [0, 1, 2].map((axis) => (body.middle[axis] ?? 0) - (near.about[axis] ?? 0));
    if (Math.hypot(x ?? 0, y ?? 0, z ?? 0) > NEAR * near.across) return "gone";
    // chains that nothing holds yet: no more than what comes to the joints of the work
    if (body.held > shown.moment && !body.ends.some((joint) => near.joints.has(joint))) return "gone";
    const spot = place(from, body.middle);
    const radius = body.radius * spot.scale;
    const covers = wanted.some(
      ([other, across]) =>
        spot.depth < other.depth - 0.02 &&
        Math.hypot(spot.x - other.x, spot.y - other.y) < 0.8 * (radius + across),
    );
    if (!covers) return look;
    return body.isLink && body.ends.some((joint) => near.joints.has(joint)) ? "clear" : "gone";
  });
}

/** The body under a point of the picture, the nearest to the eye. */
export function bodyAt(
  bodies: readonly Body[],
  look: readonly Look[],
  from: Pose,
  x: number,
  y: number,
): Body | undefined {
  let best: [number, Body] | undefined;
  bodies.forEach((body, i) => {
    if (look[i] === "gone" || look[i] === "clear") return;
    const spot = place(from, body.middle);
    if (Math.hypot(spot.x - x, spot.y - y) > body.radius * spot.scale) return;
    if (!best || spot.depth < best[0]) best = [spot.depth, body];
  });
  return best?.[1];
}
