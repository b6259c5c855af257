// The camera: a seat, and how far it has been turned and drawn near from there.
import type { Point, Seat } from "./data";
import { add, cross, dot, sub, times, turned, unit } from "./vector";

export const VIEW_ANGLE = (26 * Math.PI) / 180;
const STEEPEST = 1.48; // just short of straight above

export interface Turned {
  round: number;
  over: number;
  near: number;
}

export const AT_THE_SEAT: Turned = { round: 0, over: 0, near: 1 };

export interface Pose {
  eye: Point;
  about: Point;
  right: Point;
  up: Point;
  back: Point;
  width: number; // of the picture, in points of the screen
  height: number;
  middle: number; // where what is looked at lies across it
}

export interface Spot {
  x: number;
  y: number;
  depth: number; // from the eye
  scale: number; // points of the screen to a metre there
}

/** Where the eye is, in a picture `width` by `height` points, `kept` of them left free at its right. */
export function pose(seat: Seat, by: Turned, width: number, height: number, kept = 0): Pose {
  const upright = unit(seat.up);
  const seated = unit(seat.to_eye);
  const level = turned(seated, upright, by.round);
  const side = unit(cross(steady(upright, level), level));
  const rise = Math.asin(Math.max(-1, Math.min(1, dot(level, upright))));
  const over = Math.max(-STEEPEST, Math.min(STEEPEST, rise + by.over)) - rise;
  const straight = Math.abs(rise) > STEEPEST;
  const back = unit(turned(level, side, straight ? -by.over : -over));
  const up = unit(cross(back, side));
  const narrow = Math.min(1, (width - kept) / Math.max(height, 1));
  const away = (seat.across_m / by.near / 2 / Math.tan(VIEW_ANGLE / 2)) / narrow;
  return { eye: add(seat.about, times(back, away)), about: seat.about, right: side, up, back, width, height, middle: (width - kept) / 2 };
}

/** Some direction that is not the line of sight. */
function steady(upright: Point, sight: Point): Point {
  return Math.abs(dot(upright, sight)) < 0.999 ? upright : [0, 1, 0];
}

/** Where a point lies in the picture, from its upper left corner. */
export function place(from: Pose, at: Point): Spot {
  const away = sub(at, from.eye);
  const depth = Math.max(-dot(away, from.back), 1e-3);
  const scale = from.height / 2 / Math.tan(VIEW_ANGLE / 2) / depth;
  return {
    x: from.middle + dot(away, from.right) * scale,
    y: from.height / 2 - dot(away, from.up) * scale,
    depth,
    scale,
  };
}
