// What is written over a picture: the way of the work, the labels of joints, a person's height.
import { place, type Pose } from "./camera";
import type { Point } from "./data";
import { s } from "./dom";

export interface Tag {
  joint: string;
  at: Point;
  order: number; // 0: without a number
}

/** A label as it lies in the picture, with its joint. */
export interface Written {
  joint: string;
  spot: Spot;
  box: Box;
}

interface Box {
  left: number;
  right: number;
  top: number;
  foot: number;
}

interface Spot {
  x: number;
  y: number;
}

// points of the screen
const LETTER = 10; // about as wide as one of a label
const SMALL_LETTER = 7;
const HIGH = 17; // as high as a label
const NUMBER = 13; // half of the disc of a number
const DOT = 4;
const ROOM = 3; // between labels that can be left out
const FINGER = 16; // what is so near a finger is touched

/** The ways that new chains run, as arrows from joint to joint. */
export function ways(all: readonly (readonly Tag[])[], from: Pose): SVGElement[] {
  return all.flatMap((way) => {
    const spots = way.map((tag) => place(from, tag.at));
    return spots.slice(1).map((other, i) => arrow(spots[i] ?? other, other));
  });
}

/** Labels at their joints, those with a number first; others only where there is room. */
export function tags(all: readonly Tag[], from: Pose): { drawn: SVGElement[]; written: Written[] } {
  const seen = [...all]
    .sort((a, b) => b.order - a.order)
    .map((tag) => ({ tag, spot: place(from, tag.at) }))
    .filter(({ spot: { x, y } }) => x >= 0 && y >= 0 && x <= from.width && y <= from.height);
  const discs = seen.filter(({ tag }) => tag.order).map(({ spot }) => round(spot, NUMBER));
  const written: Written[] = [];
  const drawn = seen.flatMap(({ tag, spot }) => {
    const taken = [...discs, ...written.map((each) => each.box)];
    const [best, covered] = bestCorner(tag, spot, tag.order ? taken : taken.map(loose), from);
    if (covered > 0 && !tag.order) return [];
    written.push({ joint: tag.joint, spot, box: best });
    return [drawnTag(tag, spot, best)];
  });
  return { drawn, written };
}

function round({ x, y }: Spot, half: number): Box {
  return { left: x - half, right: x + half, top: y - half, foot: y + half };
}

/** With room round it, where labels are many. */
function loose({ left, right, top, foot }: Box): Box {
  return { left: left - ROOM, right: right + ROOM, top: top - ROOM, foot: foot + ROOM };
}

/** Where a label covers least: right above its joint, else at another corner of it. */
function bestCorner(tag: Tag, { x, y }: Spot, taken: readonly Box[], from: Pose): [Box, number] {
  const wide = LETTER * tag.joint.length;
  const [aside, up] = tag.order ? [NUMBER + 3, 3] : [DOT + 3, 0];
  const corners = [
    [x + aside, y - up - HIGH],
    [x - aside - wide, y - up - HIGH],
    [x + aside, y + up],
    [x - aside - wide, y + up],
  ].map(([left = 0, top = 0]): Box => ({ left, right: left + wide, top, foot: top + HIGH }));
  const picture = { left: 0, right: from.width, top: 0, foot: from.height };
  const covered = corners.map((box) => taken.reduce((sum, other) => sum + common(box, other), wide * HIGH - common(box, picture)));
  const least = Math.min(...covered);
  return [corners[covered.indexOf(least)] ?? round({ x, y }, HIGH), least];
}

/** The area that two boxes have in common. */
function common(one: Box, other: Box): number {
  const wide = Math.min(one.right, other.right) - Math.max(one.left, other.left);
  const high = Math.min(one.foot, other.foot) - Math.max(one.top, other.top);
  return Math.max(0, wide) * Math.max(0, high);
}

function drawnTag(tag: Tag, { x, y }: Spot, box: Box): SVGElement {
  const group = s("g", { "data-joint": tag.joint, "data-order": tag.order, transform: `translate(${x.toFixed(1)} ${y.toFixed(1)})` });
  if (tag.order) {
    if (tag.order === 1) group.append(s("circle", { r: 16, class: "begin" }));
    group.append(s("circle", { r: 12, class: "order" }), s("text", { y: 5, class: "number" }, String(tag.order)));
  } else group.append(s("circle", { r: DOT, class: "dot" }));
  const right = box.left >= x;
  const at = { x: ((right ? box.left : box.right) - x).toFixed(1), y: (box.foot - 4 - y).toFixed(1) };
  group.append(s("text", { ...at, class: "joint", "text-anchor": right ? "start" : "end" }, tag.joint));
  return group;
}

/** The joint under a point: the nearest whose disc or label a finger there would touch. */
export function labelAt(written: readonly Written[], x: number, y: number): string | undefined {
  const away = ({ spot, box }: Written) =>
    Math.min(
      Math.hypot(x - spot.x, y - spot.y),
      Math.hypot(Math.max(box.left - x, 0, x - box.right), Math.max(box.top - y, 0, y - box.foot)),
    );
  const near = written.map((each) => ({ joint: each.joint, away: away(each) })).filter((each) => each.away < FINGER);
  return near.sort((one, other) => one.away - other.away)[0]?.joint;
}

/** How tall the person is, under its feet. */
export function tallness(tall: string, feet: Point, from: Pose): SVGElement {
  const { x, y } = place(from, feet);
  const half = tall.length * SMALL_LETTER * 0.5;
  const inside = Math.max(half, Math.min(from.width - half, x));
  return s("text", { class: "tall", x: inside.toFixed(1), y: Math.min(from.height - 6, y + 18).toFixed(1) }, tall);
}

function arrow(one: Spot, other: Spot): SVGElement {
  const away = Math.hypot(other.x - one.x, other.y - one.y) || 1;
  const [x, y] = [(other.x - one.x) / away, (other.y - one.y) / away];
  const gap = Math.min(16, away / 3);
  const point = (along: number, across: number) => `${(along * x - across * y).toFixed(1)} ${(along * y + across * x).toFixed(1)}`;
  const end = away - gap;
  const line = `M${point(gap, 0)}L${point(end, 0)}`;
  const head = `M${point(end - 10, -5)}L${point(end, 0)}L${point(end - 10, 5)}`;
  const group = s("g", { class: "way", transform: `translate(${one.x.toFixed(1)} ${one.y.toFixed(1)})` });
  group.append(s("path", { d: line, class: "under" }), s("path", { d: line + head }));
  return group;
}
