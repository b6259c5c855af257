// The page's words, in the language that the server says them in.
import { signal } from "@preact/signals";
import { filled } from "../isolates";
import { answerIn, getWords } from "./api";
import type { PageWords } from "./contract";

export const words = signal<PageWords>({ language: "en", languages: {}, words: {} });

/** A message of the page, its {placeholders} filled. */
export function say(key: string, values: Readonly<Record<string, string | number>> = {}): string {
  return filled(words.value.words[key] ?? key, values);
}

export async function loadWords(): Promise<void> {
  words.value = await getWords();
  document.documentElement.lang = words.value.language;
}

/** Have everything said in another language. */
export async function speak(language: string): Promise<void> {
  answerIn(language);
  await loadWords();
}

/** What the server says, begun with a capital. */
export const capital = (text: string): string => text.slice(0, 1).toLocaleUpperCase(words.value.language) + text.slice(1);

/** What the server says of a refusal, as a sentence that stands by itself. */
export const sentence = (text: string): string => ended(capital(text));

/** The same behind a colon: it begins as it is, be it with the name of a file. */
export const ended = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`);
