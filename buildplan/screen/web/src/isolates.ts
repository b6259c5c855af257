// Somebody's words within a sentence of ours, kept from turning it round: isolates of the Unicode
// Bidirectional Algorithm (UAX 9, 2.4), as the server's messages have them.
const FIRST_STRONG = "\u2068";
const END = "\u2069";
// letters of scripts that are written from the right (their blocks of the Unicode Standard)
const FROM_RIGHT = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u;

/** The text, as an isolate where it has a letter from the right that is in none. */
export function isolated(text: string): string {
  let depth = 0;
  for (const sign of text) {
    if (sign === FIRST_STRONG) depth += 1;
    else if (sign === END) depth -= 1;
    else if (depth === 0 && FROM_RIGHT.test(sign)) return `${FIRST_STRONG}${text}${END}`;
  }
  return text;
}

/** The text as somebody would write it: without the signs of isolates. */
export const bare = (text: string): string => text.replaceAll(FIRST_STRONG, "").replaceAll(END, "");

/** A message, its {placeholders} filled. */
export function filled(text: string, values: Readonly<Record<string, string | number>>): string {
  return text.replace(/\{(\w+)\}/g, (whole, name: string) => isolated(String(values[name] ?? whole)));
}
