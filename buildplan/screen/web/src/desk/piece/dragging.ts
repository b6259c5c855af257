// Dragging a tile to another place: at once by mouse and pen, by a finger after it has rested.
import { signal } from "@preact/signals";
import type { Path } from "../contract";
import { holderOf, indexIn, keyOf, pathOf } from "./paths";

const BEGUN = 6; // points of the screen that a mouse moves before it drags
const REST_MS = 260; // how long a finger rests before it does

/** What is carried, and before which item of which list it would come down. */
export interface Drag {
  what: string; // place of a tile, or the number of a kind of cell
  kind: boolean;
  x: number;
  y: number;
  to: { list: Path; index: number; beside: string; after: boolean } | null;
}

export const drag = signal<Drag | null>(null);

/** Where something let go at a point of the screen would come, in a strip. */
export function placeUnder(strip: HTMLElement, x: number, y: number): Drag["to"] {
  const tiles = [...strip.querySelectorAll<HTMLElement>("[data-path]")];
  const over = document.elementFromPoint(x, y)?.closest<HTMLElement>("[data-path]");
  const near = over && strip.contains(over) ? over : nearest(tiles, x, y);
  const key = near?.dataset["path"];
  if (!near || key === undefined) return null;
  const box = near.getBoundingClientRect();
  const after = x > box.left + box.width / 2;
  const path = pathOf(key);
  return { list: holderOf(path), index: indexIn(path) + (after ? 1 : 0), beside: key, after };
}

/** The tile of the nearest row, and in it the nearest, where the strip is but no tile. */
function nearest(tiles: readonly HTMLElement[], x: number, y: number): HTMLElement | undefined {
  const away = (tile: HTMLElement): number => {
    const box = tile.getBoundingClientRect();
    const across = Math.max(box.left - x, 0, x - box.right);
    const down = Math.max(box.top - y, 0, y - box.bottom);
    return across + 3 * down;
  };
  const [first] = tiles.map((tile) => ({ tile, far: away(tile) })).sort((a, b) => a.far - b.far);
  return first && first.far < 160 ? first.tile : undefined;
}

interface Held {
  strip: () => HTMLElement | null;
  let: (drag: Drag) => void;
}

/** Have what is pressed be carried; answers whether the press was more than a press. */
export function carry(event: PointerEvent, what: string, kind: boolean, held: Held): void {
  if (event.button !== 0 || !event.isPrimary) return;
  const from = { x: event.clientX, y: event.clientY };
  const finger = event.pointerType === "touch";
  const begin = (x: number, y: number): void => {
    drag.value = { what, kind, x, y, to: null };
  };
  const rest = finger ? setTimeout(() => begin(from.x, from.y), REST_MS) : undefined;

  const move = (now: PointerEvent): void => {
    if (now.pointerId !== event.pointerId) return;
    const away = Math.hypot(now.clientX - from.x, now.clientY - from.y);
    if (!drag.value) {
      if (finger) {
        if (away > BEGUN) stop(); // the finger scrolls
        return;
      }
      if (away < BEGUN) return;
      begin(now.clientX, now.clientY);
    }
    const strip = held.strip();
    drag.value = { what, kind, x: now.clientX, y: now.clientY, to: strip ? placeUnder(strip, now.clientX, now.clientY) : null };
  };
  const still = (touch: TouchEvent): void => {
    if (drag.value) touch.preventDefault(); // carried: the page does not scroll
  };
  const up = (): void => {
    const now = drag.value;
    stop();
    if (now?.to) held.let(now);
    if (now) swallowClick();
  };
  const escape = (key: KeyboardEvent): void => {
    if (key.key === "Escape") stop();
  };
  function stop(): void {
    clearTimeout(rest);
    drag.value = null;
    removeEventListener("pointermove", move);
    removeEventListener("pointerup", up);
    removeEventListener("pointercancel", stop);
    removeEventListener("touchmove", still);
    removeEventListener("keydown", escape);
  }
  addEventListener("pointermove", move);
  addEventListener("pointerup", up);
  addEventListener("pointercancel", stop);
  addEventListener("touchmove", still, { passive: false });
  addEventListener("keydown", escape);
}

/** The click that ends a drag is none. */
function swallowClick(): void {
  const swallow = (event: Event): void => {
    event.stopPropagation();
    event.preventDefault();
  };
  addEventListener("click", swallow, { capture: true, once: true });
  setTimeout(() => removeEventListener("click", swallow, { capture: true }), 0);
}

export const isCarried = (path: Path): boolean => drag.value?.what === keyOf(path);
