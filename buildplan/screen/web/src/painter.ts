// What can put bodies on a canvas: WebGL where there is one, else plain shapes.
import type { Body, Look } from "./bodies";
import type { Pose } from "./camera";
import type { Balloon, Person, Seat } from "./data";

export interface Ground {
  paper: string; // colour of the page
  pale: number; // how much of it is mixed into what stands already
}

/** What a painter has to know of a piece beside its bodies. */
export interface Subject {
  readonly piece: { readonly balloons: readonly Balloon[] };
  readonly person: Person;
}

export interface Frame {
  bodies: readonly Body[];
  looks: readonly Look[];
  from: Pose;
  seat: Seat;
  person: boolean;
  near: boolean; // close to the work: light by the eye, finer bodies, no shadow
  ground: Ground;
  colours: ReadonlyMap<Body, string> | null; // bodies in another colour than their own
}

export interface Painter {
  readonly canvas: HTMLCanvasElement;
  readonly kind: "webgl" | "flat";
  paint(frame: Frame): void;
  /** Paint another piece from now on. */
  take(subject: Subject, bodies: readonly Body[]): void;
}

/** The ground that the page has now, light or dark. */
export function groundNow(): Ground {
  const dark = getComputedStyle(document.documentElement).getPropertyValue("--dark").trim() === "1";
  return dark ? { paper: "#2a2f36", pale: 0.72 } : { paper: "#d9d7d2", pale: 0.74 };
}

export const PERSON_COLOUR = "#98A3AF";
export const PICKED_COLOUR = "#D4351C";

/** How far round the upright axis the eye is from straight before the front. */
export function round(from: Pose): number {
  return Math.atan2(-from.right[2], from.right[0]);
}

/** A colour with a share of another. */
export function mixed(first: string, second: string, share: number): string {
  const part = (colour: string, i: number) => parseInt(colour.slice(i, i + 2), 16);
  const hex = [1, 3, 5].map((i) =>
    Math.round(part(first, i) * (1 - share) + part(second, i) * share)
      .toString(16)
      .padStart(2, "0"),
  );
  return `#${hex.join("")}`;
}

const LONGEST_WAIT = 1000; // milliseconds, where the browser does not tell that it has painted

/** Once what is drawn can be seen: making WebGL ready holds up the screen for a while. */
export function afterFirstPaint(then: () => void): void {
  let due = true;
  const once = () => {
    if (due) setTimeout(then, 0);
    due = false;
  };
  try {
    new PerformanceObserver((_, observer) => {
      observer.disconnect();
      once();
    }).observe({ type: "paint", buffered: true });
  } catch {
    requestAnimationFrame(() => requestAnimationFrame(once));
  }
  setTimeout(once, LONGEST_WAIT);
}
