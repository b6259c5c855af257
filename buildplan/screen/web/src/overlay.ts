// What is written over a picture: the way of the work, the labels of joints, a person's height.
import { place, type Pose } from "./camera";
import type { Point } from "./data";
import { s } from "./dom";

export interface Tag {
  joint: string;
  at: Point;
  order: number; // 0: without a number
}

/** A label as it lies in the picture: its joint, and the box of both. */
export interface Written {
  joint: string;
  left: number;
  right: number;
  y: number;
}

interface Spot {
  x: number;
  y: number;
}

const LETTER = 10; // points of the screen, about as wide as one of a label
const SMALL_LETTER = 7;
const LINE = 17; // as high as one
const AT_A_NUMBER = 17; // how far beside its joint a label stands
const AT_A_DOT = 7;

/** The ways that new chains run, as arrows from joint to joint. */
export function ways(all: readonly (readonly Tag[])[], from: Pose): SVGElement[] {
  return all.flatMap((way) => {
    const spots = way.map((tag) => place(from, tag.at));
    return spots.slice(1).map((other, i) => arrow(spots[i] ?? other, other));
  });
}

/** Labels at their joints, those with a number first; others only where there is room. */
export function tags(all: readonly Tag[], from: Pose): { drawn: SVGElement[]; written: Written[] } {
  const drawn: SVGElement[] = [];
  const written: Written[] = [];
  for (const tag of [...all].sort((a, b) => b.order - a.order)) {
    const { x, y } = place(from, tag.at);
    if (x < 0 || y < 0 || x > from.width || y > from.height) continue;
    const wide = LETTER * tag.joint.length + 6;
    const aside = tag.order ? AT_A_NUMBER : AT_A_DOT;
    const turned = x + aside + wide > from.width; // the label stands left of its joint
    const left = turned ? x - wide : x;
    const free = written.every((other) => Math.abs(other.y - y) > LINE || left > other.right || other.left > left + wide);
    if (!free && !tag.order) continue;
    written.push({ joint: tag.joint, left, right: left + wide + aside, y });
    drawn.push(drawnTag(tag, { x, y }, turned ? -aside : aside));
  }
  return { drawn, written };
}

function drawnTag(tag: Tag, { x, y }: Spot, aside: number): SVGElement {
  const group = s("g", { "data-joint": tag.joint, "data-order": tag.order, transform: `translate(${x.toFixed(1)} ${y.toFixed(1)})` });
  if (tag.order) {
    if (tag.order === 1) group.append(s("circle", { r: 16, class: "begin" }));
    group.append(s("circle", { r: 12, class: "order" }), s("text", { y: 5, class: "number" }, String(tag.order)));
  } else group.append(s("circle", { r: 4, class: "dot" }));
  group.append(s("text", { x: aside, y: -8, class: "joint", "text-anchor": aside < 0 ? "end" : "start" }, tag.joint));
  return group;
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
