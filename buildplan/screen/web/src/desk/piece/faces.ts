// The sides of an assembly's parts: which of them a tap in the picture is on, and where it is drawn.
import { place, VIEW_ANGLE, type Pose, type Spot } from "../../camera";
import type { Joint, Point } from "../../data";
import { s } from "../../dom";
import { add, sub, times, unit } from "../../vector";
import { partOf } from "./picking";

/** Where a part can be set beside another, as the piece is seen from its front. */
export const SIDES = ["on", "left_of", "right_of", "in_front_of", "behind"] as const;
export type Side = (typeof SIDES)[number];
export interface Face {
  part: string;
  side: Side;
}

interface Box {
  part: string;
  low: Point;
  high: Point;
}

const TOP = 0.3; // of a part's height: what is seen of its top from the front
const ROUND = 0.1; // metres: a balloon about its joints, for something to tap
const OF_SIDE: Readonly<Record<Side, readonly [axis: 0 | 1 | 2, high: boolean]>> = {
  on: [1, true],
  left_of: [0, false],
  right_of: [0, true],
  in_front_of: [2, true],
  behind: [2, false],
};

/** What each outermost part takes up, by where its joints are. */
export function boxes(joints: readonly Joint[]): Box[] {
  const found = new Map<string, Point[]>();
  for (const { label, at } of joints) {
    const part = partOf(label);
    if (part) found.set(part, [...(found.get(part) ?? []), at]);
  }
  const most = (points: readonly Point[], of: (...all: number[]) => number, by: number): Point =>
    [0, 1, 2].map((axis) => of(...points.map((at) => at[axis as 0 | 1 | 2])) + by) as unknown as Point;
  return [...found].map(([part, points]) => ({ part, low: most(points, Math.min, -ROUND), high: most(points, Math.max, ROUND) }));
}

/** The side of a part that is seen at a spot of the picture; none of a part that is being set. */
export function faceAt(joints: readonly Joint[], from: Pose, x: number, y: number, without: string): Face | null {
  const scale = from.height / 2 / Math.tan(VIEW_ANGLE / 2);
  const across = times(from.right, (x - from.middle) / scale);
  const way = unit(sub(add(across, times(from.up, (from.height / 2 - y) / scale)), from.back));
  const hits = boxes(joints).flatMap((box) => (box.part === without ? [] : entered(box, from.eye, way)));
  const first = hits.sort((one, other) => one.depth - other.depth)[0];
  return first?.face ?? null;
}

/** Where a line of sight comes into a box: the last of its three slabs (Kay and Kajiya 1986). */
function entered(box: Box, eye: Point, way: Point): { face: Face | null; depth: number }[] {
  let [near, far] = [-Infinity, Infinity];
  let side: Side | null = null;
  for (const axis of [0, 1, 2] as const) {
    const ends = [(box.low[axis] - eye[axis]) / way[axis], (box.high[axis] - eye[axis]) / way[axis]] as const;
    const first = Math.min(...ends);
    if (first > near) {
      near = first;
      side = SIDES.find((one) => OF_SIDE[one][0] === axis && OF_SIDE[one][1] === way[axis] < 0) ?? null;
    }
    far = Math.min(far, Math.max(...ends));
  }
  if (near > far || near <= 0) return [];
  const isTop = eye[1] + near * way[1] > topFrom(box);
  return [{ face: isTop ? { part: box.part, side: "on" } : side ? { part: box.part, side } : null, depth: near }];
}

const topFrom = ({ low, high }: Box): number => high[1] - TOP * (high[1] - low[1]);

/** The side that is meant, and thinly every part that could be. */
export function drawnFaces(joints: readonly Joint[], meant: Face | null, without: string, from: Pose): SVGElement[] {
  return boxes(joints)
    .filter(({ part }) => part !== without)
    .flatMap((box) => SIDES.map((side) => drawnFace(box, side, meant?.part === box.part && meant.side === side, from)));
}

function drawnFace(box: Box, side: Side, meant: boolean, from: Pose): SVGElement {
  const [axis, high] = OF_SIDE[side];
  const low: Point = side === "on" ? [box.low[0], topFrom(box), box.low[2]] : box.low;
  const most: Point = side === "on" ? box.high : [box.high[0], topFrom(box), box.high[2]];
  const corners = [0, 1, 2, 3, 4, 5, 6, 7]
    .filter((corner) => side === "on" || ((corner >> axis) & 1) === Number(high))
    .map((corner) => [0, 1, 2].map((each) => ((corner >> each) & 1 ? most : low)[each as 0 | 1 | 2]) as unknown as Point);
  const spots = hull(corners.map((at) => place(from, at)));
  const d = spots.map(({ x, y }, i) => `${i ? "L" : "M"}${x.toFixed(1)} ${y.toFixed(1)}`).join("");
  return s("path", { d: `${d}Z`, class: meant ? "side meant" : "side" });
}

/** The spots round all others (Andrew's monotone chain, 1979). */
function hull(spots: readonly Spot[]): Spot[] {
  const sorted = [...spots].sort((a, b) => a.x - b.x || a.y - b.y);
  const half = (way: readonly Spot[]): Spot[] => {
    const kept: Spot[] = [];
    for (const spot of way) {
      while (kept.length > 1 && turn(kept.at(-2)!, kept.at(-1)!, spot) <= 0) kept.pop();
      kept.push(spot);
    }
    return kept.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

const turn = (a: Spot, b: Spot, c: Spot): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
