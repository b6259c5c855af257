// What can put bodies on a canvas: WebGL where there is one, else plain shapes.
import type { Body, Look } from "./bodies";
import type { Pose } from "./camera";
import type { Page, Seat } from "./data";

export interface Ground {
  paper: string; // colour of the page
  pale: number; // how much of it is mixed into what stands already
}

export interface Frame {
  bodies: readonly Body[];
  looks: readonly Look[];
  from: Pose;
  seat: Seat;
  width: number;
  height: number;
  person: boolean;
  near: boolean; // close to the work: light by the eye, finer bodies, no shadow
  ground: Ground;
}

export interface Painter {
  readonly canvas: HTMLCanvasElement;
  readonly kind: "webgl" | "flat";
  paint(frame: Frame): void;
}

export type MakePainter = (page: Page, bodies: readonly Body[]) => Painter;

export const PERSON_COLOUR = "#8A94A0";
export const PICKED_COLOUR = "#D4351C";

export function mixed(first: string, second: string, share: number): string {
  const part = (colour: string, i: number) => parseInt(colour.slice(i, i + 2), 16);
  const hex = [1, 3, 5].map((i) =>
    Math.round(part(first, i) * (1 - share) + part(second, i) * share)
      .toString(16)
      .padStart(2, "0"),
  );
  return `#${hex.join("")}`;
}
