// What the reader has chosen on the page of a piece; none of it is in the file.
import { signal } from "@preact/signals";
import type { Path } from "../contract";
import type { Face } from "./faces";
import type { Scope } from "./picking";

export const OVERLAYS = ["dimensions", "labels", "foot", "gust", "door", "van"] as const;
export type Overlay = (typeof OVERLAYS)[number];
export const SHEETS = ["made", "figures", "work"] as const;
export type Sheet = (typeof SHEETS)[number];

/** What a tap in the picture does beside turning it. */
export type Tapping =
  | { does: "paint"; balloon: string; scope: Scope }
  | { does: "side"; part: string; at: Path }
  | { does: "between" | "across"; part: string; at: Path; first: string | null }
  | { does: "tie"; first: string | null; to: Path }
  | { does: "joint"; into: Path };

export const tapping = signal<Tapping | null>(null);
export const overlays = signal<ReadonlySet<Overlay>>(new Set());
export const gust = signal(0); // which of the gusts
export const door = signal(0);
/** How far the work has come in the picture; null: all of it. */
export const moment = signal<number | null>(null);
/** Whether a step is seen as it will be printed, in the picture's place. */
export const asPrinted = signal(false);
/** The side of a part that is pointed at. */
export const aimed = signal<Face | null>(null);
/** Links that are about to be painted, chosen by name. */
export const brushed = signal<readonly string[]>([]);
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

/** How a part can be set: on or beside one, across two, or between two. */
export const SETTINGS = ["side", "across", "between"] as const;

/** Wait for a tap that says where a part is to be. */
export function setPart(part: string, at: Path, does: (typeof SETTINGS)[number]): void {
  aimed.value = null;
  tapping.value = does === "side" ? { does, part, at } : { does, part, at, first: null };
}

export function stopTapping(): void {
  tapping.value = aimed.value = null;
  lit.value = [];
}

/** Nothing is left of one piece when another is opened. */
export function forget(): void {
  tapping.value = moment.value = tile.value = null;
  gust.value = door.value = 0;
  lit.value = brushed.value = [];
  aimed.value = null;
  told.value = "";
}
