// What the desk's server says and hears; the same as buildplan/desk/model.py. Figures are worked
// out there: the page shows them.
import type { Person, Piece, Point, Seat } from "../data";

export type Path = readonly (string | number)[];
export type Stands = "stands" | "held" | "leans" | "falls" | "unknown";

export interface Card {
  name: string;
  file: string;
  version: string;
  title: string;
  pattern: string;
  picture: string | null;
  height: string;
  width: string;
  balloons: string;
  stands: Stands;
  stands_words: string;
  problems: number;
  state: "ready" | "working" | "broken";
  message: string;
}

export interface Home {
  folder: string;
  read_only: boolean;
  designs: readonly Card[];
  away: readonly Card[];
}

export interface Beginning {
  kind: "pattern" | "outline" | "gallery";
  key: string;
  title: string;
  about: string;
  picture: string | null;
}

/** What a new design begins with. */
export type From =
  | { kind: "pattern" | "gallery"; key: string }
  | { kind: "outline"; key?: string; path?: string; height: string }
  | { kind: "words"; text: string; height?: string };

/** A design that was made, or the work that will make it. */
export interface Made {
  name?: string;
  job?: string;
}

export interface Choice {
  value: string;
  label: string;
}

export interface Control {
  path: Path;
  key: string;
  label: string;
  help: string;
  kind: "number" | "size" | "whole" | "choice" | "colour" | "flag" | "text" | "cells" | "list" | "group" | "map" | "joints" | "pair";
  unit?: string;
  choices?: readonly Choice[];
  value: unknown;
  text: string;
  hex?: string;
  default: unknown;
  low?: number;
  high?: number;
  items?: readonly Control[];
  add?: unknown;
}

export interface Tile {
  path: Path;
  cell: string | readonly number[] | null;
  label: string;
  repeat: number;
  turns_deg: number | null;
  picture: string;
  tiles: readonly Tile[];
}

export interface CellKind {
  cell: string | readonly number[];
  label: string;
  turns_deg: number | null;
  picture: string;
}

export interface Course {
  tiles: readonly Tile[];
  kinds: readonly CellKind[];
  needed_deg: number | null;
  total_deg: number | null;
  left: string;
  right: string;
}

export interface Problem {
  number: number;
  kind: string;
  message: string;
  path: Path;
  line: number | null;
  joints: readonly string[];
  suggestion: { words: string; can_apply: boolean; ways: readonly { way: number; words: string }[] } | null;
}

/** A design as it is in its file. */
export interface Design {
  name: string;
  version: string;
  text: string;
  title: string;
  pattern: string;
  can_undo: boolean;
  can_redo: boolean;
  read_only: boolean;
  controls: readonly Control[];
  course: Course | null;
  palette: readonly { value: string; name: string; hex: string }[];
  problems: readonly Problem[]; // of the file alone: what a reader of it says
  unreadable: string | null;
}

/** Two changes met: what is there now, and where the other is kept. */
export interface Met {
  version: string;
  text: string;
  kept: string;
  message: string;
}

export type Edit =
  | { op: "put"; path: Path; value: unknown }
  | { op: "take_out"; path: Path }
  | { op: "insert"; path: Path; value: unknown }
  | { op: "move"; path: Path; to: number }
  | { op: "suggestion"; number: number; way: number }
  | { op: "paint"; links: readonly string[]; balloon: string };

export interface Overlays {
  dimensions: readonly { from: Point; to: Point; words: string }[];
  foot: readonly (readonly [number, number])[];
  mass: readonly [number, number] | null;
  lean: { from: readonly [number, number]; to: readonly [number, number]; words: string } | null;
  gusts: readonly { speed: number; words: string; ballast_kg: number; ballast_words: string }[];
  doors: readonly { name: string; width_m: number; height_m: number; words: string; passes: boolean }[];
  van: readonly { name: string; width_m: number; height_m: number; depth_m: number; words: string; passes: boolean }[];
}

/** What is known of a design's shape, in words and as `check --json` has it. */
export interface Facts {
  version: string;
  figures: readonly { key: string; label: string; words: string }[];
  counts: readonly { key: string; label: string; colour: string; number: number }[];
  stands: Stands;
  turn: { total: number; needed: number | null; left: string; right: string } | null;
  problems: readonly Problem[];
  overlays: Overlays;
  paint: { parts: readonly { part: string; label: string; runs: readonly (readonly string[])[] }[]; why: string | null };
  check: Readonly<Record<string, unknown>>;
}

/** A piece with what the viewer needs beside it; see screen/page.py. */
export interface Shown {
  piece: Piece;
  whole: Seat;
  beside: Seat;
  person: Person;
}

export interface Offer {
  words: string;
  picture: string;
  edits: readonly Edit[];
}

export interface Printing {
  whats: readonly { key: string; words: string; about: string; takes: readonly string[] }[];
  editions: readonly Choice[];
  papers: readonly Choice[];
  languages: readonly Choice[];
  units: readonly Choice[];
  brands: readonly Choice[];
}

export interface Job {
  job: string;
  what: string;
  name: string;
  state: "waiting" | "working" | "done" | "failed" | "stopped";
  share: number;
  words: string;
  message: string;
  files: readonly { name: string; url: string; type: string }[];
}

export type Happened =
  | { kind: "changed"; name: string; version: string; by: "outside" | "desk" }
  | { kind: "worked"; name: string; version: string }
  | { kind: "card"; name: string }
  | ({ kind: "job" } & Job)
  | { kind: "folder" };

export interface PageWords {
  language: string;
  languages: Readonly<Record<string, string>>; // each in itself
  words: Readonly<Record<string, string>>;
}
