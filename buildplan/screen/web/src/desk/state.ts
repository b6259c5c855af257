// What the page knows. Everything here was said by the server, or is where the reader is.
import { computed, signal } from "@preact/signals";
import type { Design, Facts, Home, Job, Met, Problem, Shown } from "./contract";
import { placeOf, type Place } from "./route";

export const place = signal<Place>(placeOf(typeof location === "undefined" ? "" : location.hash));
export const connected = signal(true);
export const home = signal<Home | null>(null);

/** The open design as its file is, in the newest version known. */
export const design = signal<Design | null>(null);
export const version = computed(() => design.value?.version ?? "");
/** Why the open design cannot be shown at all: it is not there any more. */
export const missing = signal<string | null>(null);

/** What was worked out last, with the version that it is of. */
export interface Of<T> {
  name: string;
  version: string;
  value: T;
}
export const facts = signal<Of<Facts> | null>(null);
export const piece = signal<Of<Shown> | null>(null);
/** Why the newest version has no shape. */
export const unworkable = signal<Of<readonly Problem[]> | null>(null);

/** How long the newest version is likely to take, where that is long. */
export const wait = signal<Of<string> | null>(null);

const isNow = (of: Of<unknown> | null): boolean => of !== null && of.name === design.value?.name && of.version === version.value;
/** Whether what is shown is still of an older version. */
export const working = computed(() => design.value !== null && !isNow(unworkable.value) && !(isNow(facts.value) && isNow(piece.value)));

/** What is said of that while it lasts. */
export const waitWords = computed(() => (working.value && isNow(wait.value) ? (wait.value?.value ?? "") : ""));

/** All that is wrong with the open design, as far as is known. */
export const problems = computed((): readonly Problem[] => {
  if (isNow(unworkable.value)) return unworkable.value?.value ?? [];
  if (isNow(facts.value)) return facts.value?.value.problems ?? [];
  return design.value?.problems ?? [];
});

/** How often the server said that a picture of a beginning is there. */
export const drawn = signal(0);
export const saving = signal<"saved" | "saving" | "not saved">("saved");
/** Two changes met; kept on the page until the reader has read it. */
export const met = signal<Met | null>(null);
/** What was being written in the file tab when a change from elsewhere met it. */
export const mine = signal<string | null>(null);
export const jobs = signal<Readonly<Record<string, Job>>>({});

/** What can be done at once about what is said. */
export interface Deed {
  words: string;
  act: () => void;
}
export interface Notice {
  id: number;
  text: string;
  grave: boolean;
  deed: Deed | null;
}
export const notices = signal<readonly Notice[]>([]);
let counted = 0;

export function notice(text: string, grave = false, deed: Deed | null = null): void {
  counted += 1;
  const others = notices.value.filter((one) => one.text !== text);
  notices.value = [...others.slice(-2), { id: counted, text, grave, deed }];
}

export function dismiss(id: number): void {
  notices.value = notices.value.filter((one) => one.id !== id);
}
