// What is drawn over the picture when it is asked for: measures, the foot, the wind, doors, a van.
// Every length and word was worked out by the server; here it is only put where the eye sees it.
import { place, type Pose } from "../../camera";
import type { Point } from "../../data";
import { s } from "../../dom";
import type { Overlays } from "../contract";

type Spot = { x: number; y: number };
const at = (from: Pose, point: Point): Spot => place(from, point);
const onFloor = ([x, z]: readonly [number, number]): Point => [x, 0, z];
const LEAN_M = 0.6; // how long the arrow is along the floor
const LETTER = 7.5; // about as wide as one of a label, in points of the screen

function path(spots: readonly Spot[], name: string, closed = false): SVGElement {
  const d = spots.map(({ x, y }, i) => `${i ? "L" : "M"}${x.toFixed(1)} ${y.toFixed(1)}`).join("");
  return s("path", { d: closed ? `${d}Z` : d, class: name });
}

export const passes = (fit: string): boolean => fit !== "not";

/** Words at a spot, kept within the picture. */
function words(text: string, { x, y }: Spot, from: Pose): SVGElement {
  const half = (text.length * LETTER) / 2 + 4;
  const across = Math.max(half, Math.min(from.width - half, x));
  const down = Math.max(16, Math.min(from.height - 8, y));
  return s("text", { x: across.toFixed(1), y: down.toFixed(1), class: "measure" }, text);
}

/** A measured line, with a short stroke across each end. */
function measured(one: Spot, other: Spot): SVGElement[] {
  const away = Math.hypot(other.x - one.x, other.y - one.y) || 1;
  const [x, y] = [((other.y - one.y) / away) * 6, (-(other.x - one.x) / away) * 6];
  const stroke = (spot: Spot) => path([{ x: spot.x - x, y: spot.y - y }, { x: spot.x + x, y: spot.y + y }], "dimension");
  return [path([one, other], "dimension"), stroke(one), stroke(other)];
}

export function dimensions(all: Overlays["dimensions"], from: Pose): SVGElement[] {
  return all.flatMap((one) => {
    if (!one.from || !one.to) return [];
    const [start, end] = [at(from, one.from), at(from, one.to)];
    return [...measured(start, end), words(one.words, beside(one.name, one.words, start, end), from)];
  });
}

/** Where the words of a measure stand: beside its line, clear of those of the others and of the foot. */
function beside(name: string, text: string, start: Spot, end: Spot): Spot {
  const half = (text.length * LETTER) / 2;
  const along = name === "width" ? 0.25 : 0.5;
  const [x, y] = [start.x + along * (end.x - start.x), start.y + along * (end.y - start.y)];
  if (name === "height") return { x: x - half - 8, y };
  return { x: name === "depth" ? x - half : x, y: y + 20 };
}

/** The foot that it stands on, the point that its weight is over, and the edge it would tip over. */
export function foot(overlays: Overlays, tipping: string, from: Pose): SVGElement[] {
  const { foot: corners, middle, lean, lean_edge: edge } = overlays;
  const drawn: SVGElement[] = [];
  if (corners.length > 1) drawn.push(path(corners.map((corner) => at(from, onFloor(corner))), "foot", true));
  const { x, y } = at(from, onFloor(middle));
  drawn.push(s("circle", { cx: x.toFixed(1), cy: y.toFixed(1), r: 7, class: "mass" }));
  if (edge.length === 2) drawn.push(path(edge.map((corner) => at(from, onFloor(corner))), "lean"));
  const end: readonly [number, number] = [middle[0] + LEAN_M * lean[0], middle[1] + LEAN_M * lean[1]];
  drawn.push(...arrow({ x, y }, at(from, onFloor(end)), "lean"), words(tipping, { x: at(from, onFloor(end)).x, y: at(from, onFloor(end)).y + 40 }, from));
  return drawn;
}

function arrow(start: Spot, end: Spot, name: string): SVGElement[] {
  const away = Math.hypot(end.x - start.x, end.y - start.y) || 1;
  const [x, y] = [(end.x - start.x) / away, (end.y - start.y) / away];
  const barb = (side: number): Spot => ({ x: end.x - 11 * x + side * 6 * y, y: end.y - 11 * y - side * 6 * x });
  return [path([start, end], name), path([barb(1), end, barb(-1)], name)];
}

/** Wind on the front, longer arrows for more of it; `share` of the strongest that is offered. */
export function wind(share: number, high_m: number, text: string, from: Pose): SVGElement[] {
  if (share <= 0) return [];
  const arrows = [0.3, 0.55, 0.8].flatMap((height): SVGElement[] => {
    const end = at(from, [0, height * high_m, 0.35]);
    const start = at(from, [0, height * high_m, 0.35 + 0.4 + 0.9 * share]);
    return arrow(start, end, "wind");
  });
  return [...arrows, words(text, at(from, [0, high_m + 0.12, 0]), from)];
}

export function doorway(door: Overlays["doors"][number], from: Pose): SVGElement[] {
  const half = door.width_m / 2;
  const corners: Point[] = [[-half, 0, 0], [-half, door.height_m, 0], [half, door.height_m, 0], [half, 0, 0]];
  return [path(corners.map((corner) => at(from, corner)), passes(door.goes_through) ? "way" : "way no"), words(door.door, at(from, [0, door.height_m, 0]), from)];
}

/** The room inside a van, its edges. */
export function hold(van: Overlays["van"], name: string, from: Pose): SVGElement[] {
  const [x, y, z] = [van.width_m / 2, van.height_m, van.length_m / 2];
  const ring = (height: number): SVGElement =>
    path(([[-x, height, z], [x, height, z], [x, height, -z], [-x, height, -z]] as Point[]).map((corner) => at(from, corner)), passes(van.goes_in) ? "way" : "way no", true);
  const posts = ([[-x, z], [x, z], [x, -z], [-x, -z]] as const).map(([a, b]) =>
    path([at(from, [a, 0, b]), at(from, [a, y, b])], passes(van.goes_in) ? "way" : "way no"),
  );
  return [ring(0), ring(y), ...posts, words(name, at(from, [0, y, z]), from)];
}
