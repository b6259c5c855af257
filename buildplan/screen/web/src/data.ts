// What Python hands to the page. The piece keeps to piece.schema.json; see screen/model.py.

export type Point = readonly [number, number, number];
export type Said = Readonly<Record<string, string>>;
/** A step that a text names: the first letter of its number, how many letters it has, the step. */
export type Reference = readonly [number, number, number];

export interface Balloon {
  key: string;
  kind: "link" | "round";
  label: Said;
  size: Said;
  letter: string;
  colour: string;
  finish: string;
  gauge_m: number;
  count: number;
  spare: number;
  profile: readonly (readonly [number, number])[];
}

export interface Joint {
  label: string;
  at: Point;
  place: string;
  links: readonly string[];
  steps: readonly number[];
}

export interface Link {
  id: string;
  balloon: string;
  role: "chain" | "brace" | "single";
  start: string;
  finish: string;
  neck: string;
  tail: string;
  moment: number;
  held: number;
}

export interface Brace {
  number: number;
  section: readonly string[];
}

/** What lies between two braces, and the joints that none reaches. */
export interface Cell {
  first: number;
  second: number;
  skipped: readonly string[];
}

export interface Lock {
  joint: string;
  balloon: string;
  at: readonly [Point, Point];
  moment: number;
}

export interface Seat {
  to_eye: Point;
  up: Point;
  about: Point;
  across_m: number;
  lying: boolean;
}

export interface Turn {
  moment: number;
  name: Said;
  row: Said;
  joints: readonly string[];
  ways: readonly (readonly string[])[];
  links: readonly string[];
  locks: readonly string[];
  readies: readonly string[];
  ready_locks: readonly string[];
  seat: Seat;
}

export interface Step {
  number: number;
  stage: string;
  kind: string;
  title: Said;
  text: Said;
  refers: Readonly<Record<string, readonly Reference[]>>;
  check: Said;
  times: number;
  work: Readonly<Record<string, number>>;
  seat: Seat;
  turns: readonly Turn[];
}

export type End = "neck" | "tail";

export interface Act {
  act: "open" | "undo" | "size" | "close" | "tie" | "lock";
  joint: string;
  own_end?: End;
  link?: string;
  end?: End;
}

export interface Piece {
  design: string;
  edition: string;
  name: Said;
  languages: readonly string[];
  width_m: number;
  height_m: number;
  depth_m: number;
  draft: boolean;
  balloons: readonly Balloon[];
  joints: readonly Joint[];
  links: readonly Link[];
  locks: readonly Lock[];
  braces: readonly Brace[];
  cells: readonly Cell[];
  steps: readonly Step[];
  stages: Readonly<Record<string, Said>>;
  moments: readonly (readonly [number, number])[];
  repairs: Readonly<Record<string, readonly Act[]>>;
}

export interface Caution {
  signal: Said;
  topic: Said;
  words: Said;
}

/** A standing person seen from the front, in metres from between the feet; see screen/person.py. */
export interface Person {
  foot_x: number;
  height_m: number;
  body: { start: readonly [number, number]; pieces: readonly (readonly [number, number, number, number, number, number])[] };
  head: readonly [number, number, number];
  tall: Said;
}

export interface Page {
  piece: Piece;
  language: string;
  names: Said; // of the languages, each in itself
  tags: Said; // BCP 47
  words: Readonly<Record<string, Readonly<Record<string, string>>>>;
  cautions: readonly Caution[];
  facts: readonly (readonly [Said, Said])[];
  whole: Seat;
  beside: Seat; // from which a person beside the finished piece is seen too
  person: Person;
  brand: { name: string; colour: string; contact: Said; licence: Said } | null;
  copy: { serial: string; buyer: string } | null;
  licences: string;
  moves: readonly number[]; // steps that have pictures of hand moves
}
