// What the reader has chosen on the page of a piece; none of it is in the file.
import { signal } from "@preact/signals";
import type { Scope } from "./picking";

export const OVERLAYS = ["dimensions", "labels", "foot", "gust", "door", "van"] as const;
export type Overlay = (typeof OVERLAYS)[number];
export const SHEETS = ["made", "figures", "work"] as const;
export type Sheet = (typeof SHEETS)[number];

/** What a tap in the picture does beside turning it. */
export type Tapping =
  | { does: "paint"; balloon: string; scope: Scope }
  | { does: "on"; part: string; at: readonly (string | number)[] }
  | { does: "between"; part: string; at: readonly (string | number)[]; first: string | null }
  | { does: "tie"; first: string | null; to: readonly (string | number)[] }
  | { does: "joint"; into: readonly (string | number)[] };

export const tapping = signal<Tapping | null>(null);
export const overlays = signal<ReadonlySet<Overlay>>(new Set());
export const gust = signal(0); // which of the gusts
export const door = signal(0);
/** How far the work has come in the picture; null: all of it. */
export const moment = signal<number | null>(null);
/** Joints that are pointed at. */
export const lit = signal<readonly string[]>([]);
export const sheet = signal<Sheet>("made");
/** The tile that is meant, by its place in the file. */
export const tile = signal<string | null>(null);
/** The last thing that happened, for those who do not see it. */
export const told = signal("");

export function tell(text: string): void {
  told.value = text;
}

/** Nothing is left of one piece when another is opened. */
export function forget(): void {
  tapping.value = moment.value = tile.value = null;
  gust.value = door.value = 0;
  lit.value = [];
  told.value = "";
}
