// Vectors of three numbers.
import type { Point } from "./data";

export const add = (a: Point, b: Point): Point => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const sub = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const times = (a: Point, by: number): Point => [a[0] * by, a[1] * by, a[2] * by];
export const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: Point, b: Point): Point => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
export const unit = (a: Point): Point => times(a, 1 / Math.max(Math.hypot(...a), 1e-12));

/** `a` turned about a unit axis (Rodrigues). */
export function turned(a: Point, axis: Point, angle: number): Point {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  return add(add(times(a, c), times(cross(axis, a), s)), times(axis, dot(axis, a) * (1 - c)));
}
