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
  optional?: boolean; // whether it can be left out
  low?: number;
  high?: number;
  items?: readonly Control[];
  more?: number; // items that are not listed
  add?: unknown;
  adds?: readonly { label: string; value: unknown }[]; // what one more can be, by what it is
  forms?: readonly { label: string; value: unknown }[]; // that the value could have instead
}

export interface Tile {
  path: Path;
  cell: string | readonly number[] | null;
  cells: readonly number[]; // which cells of the course it is, from 1
  label: string;
  repeat: number;
  outer: number | null; // by how many balloons the outer chains advance; null of what is no cell
  inner: number | null;
  turns: string; // in words
  picture: string;
  tiles: readonly Tile[];
}

export interface CellKind {
  cell: string | readonly number[];
  label: string;
  outer: number;
  inner: number;
  turns: string;
  picture: string;
}

export interface Course {
  path: Path;
  parts: readonly string[]; // what the tube is called each time that it is built; none if it is the whole piece
  tiles: readonly Tile[];
  kinds: readonly CellKind[];
  turn: { least_deg: number; most_deg: number; needed_deg: number | null; fits: boolean; words: string } | null;
  sides: readonly string[];
  short: string; // which side is too short, and by how much
}

export interface Problem {
  number: number;
  kind: string;
  message: string;
  path: Path;
  line: number | null;
  joints: readonly string[];
  text?: string; // the message with its place and what would be right
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
  courses?: readonly Course[]; // of the parts of an assembly
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
  | { op: "rename"; path: Path; key: string }
  | { op: "paint"; links: readonly string[]; balloon: string };

export interface Overlays {
  dimensions: readonly { name: string; words: string; from?: Point; to?: Point }[];
  foot: readonly (readonly [number, number])[];
  middle: readonly [number, number];
  lean: readonly [number, number]; // the direction in which it goes over first
  lean_edge: readonly (readonly [number, number])[];
  gusts: readonly { m_per_s: number; speed: string; words: string }[];
  doors: readonly { door: string; width_m: number; height_m: number; goes_through: string; words: string }[];
  van: { door: string; length_m: number; width_m: number; height_m: number; goes_in: string; words: string };
}

/** A part that can be painted: the links of each of its places; `at` is where the file has its colours. */
export interface Paintable {
  part: string;
  label: string; // what is called so in the whole piece
  at: Path;
  places: readonly (readonly string[])[];
}

/** What is known of a design's shape, in words and as `check --json` has it. */
export interface Facts {
  version?: string;
  settled: boolean; // what would mend it has been tried
  balloons: string;
  counts: readonly { key: string; label: string; colour: string; count: number; words: string }[];
  sizes: { width: string; height: string; depth: string };
  weight: string;
  air: string;
  hours: string;
  cost: string | null;
  hands: string | null; // whose hands the figures are for, where theirs were measured // only at the design's own prices
  stands: { state: Stands; words: string };
  rows: readonly (readonly [string, string])[];
  problems: readonly Problem[];
  cautions: readonly string[];
  overlays: Overlays;
  paint?: { parts: readonly Paintable[]; why: string };
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
  keys: readonly Choice[];
  signers: readonly Choice[];
  designs: readonly Choice[];
  of_edition: Readonly<Record<string, string>>; // what is asked for one edition alone
}

/** What was printed of a design earlier, and the picture of it. */
export interface Printed {
  picture: string | null;
  files: readonly { name: string; url: string; made: number; cover: string | null }[]; // made: seconds since 1970
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
  | { kind: "beginnings" }
  | { kind: "folder" };

export interface PageWords {
  language: string;
  languages: Readonly<Record<string, string>>; // each in itself
  words: Readonly<Record<string, string>>;
}
