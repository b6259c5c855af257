// What is picked in the picture: joints, parts, and what is painted at one stroke.
import { place, type Pose } from "../../camera";
import type { Joint } from "../../data";
import type { Paintable } from "../contract";

/** What a tap paints: one balloon, all round at one place, a whole chain, all of its kind, or
 * stripes: all round at every second or third place from there. */
export const SCOPES = ["one", "round", "chain", "all", "second", "third"] as const;
export type Scope = (typeof SCOPES)[number];

const FINGER = 28; // points of the screen: what is so near is meant

/** Links that one tap on a link paints; none where the piece has no such part. */
export function stroke(parts: readonly Paintable[], link: string, scope: Scope): readonly string[] {
  const having = parts.filter((part) => part.places.some((place) => place.includes(link)));
  const chain = having.find((part) => part.part.length === 1);
  const whole = having.find((part) => part.part.length > 1);
  const at = (part: Paintable | undefined): readonly string[] => part?.places.find((place) => place.includes(link)) ?? [];
  switch (scope) {
    case "one":
      return chain ? at(chain) : at(whole);
    case "round":
      return at(whole ?? chain);
    case "chain":
      return (chain ?? whole)?.places.flat() ?? [];
    case "all":
      return (whole ?? chain)?.places.flat() ?? [];
    case "second":
      return striped(whole ?? chain, link, 2);
    case "third":
      return striped(whole ?? chain, link, 3);
  }
}

/** Every so many places along a part, that of a link among them. */
function striped(part: Paintable | undefined, link: string, every: number): readonly string[] {
  const first = part?.places.findIndex((place) => place.includes(link)) ?? 0;
  return part?.places.filter((_, i) => (i - first) % every === 0).flat() ?? [];
}

/** The joint that a tap is nearest to, those nearer to the eye first. */
export function jointAt(joints: readonly Joint[], from: Pose, x: number, y: number): Joint | undefined {
  const near = joints
    .map((joint) => ({ joint, spot: place(from, joint.at) }))
    .map(({ joint, spot }) => ({ joint, depth: spot.depth, away: Math.hypot(spot.x - x, spot.y - y) }))
    .filter(({ away }) => away < FINGER);
  const eye = Math.min(...near.map(({ depth }) => depth));
  const before = near.filter(({ depth }) => depth < eye + 0.15); // the front of the piece, not what is seen through it
  return before.sort((one, other) => one.away - other.away)[0]?.joint;
}

/** The part of an assembly that a joint or a link is of: L for L.A1, the outermost. */
export function partOf(label: string): string {
  return label.includes(".") ? (label.split(".")[0] ?? "") : "";
}
