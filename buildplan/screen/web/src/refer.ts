// Words that name joints and steps, with what they name to be tapped.
import type { App } from "./app";
import type { Reference } from "./data";
import { h } from "./dom";
import { hashOf, type Place } from "./route";

const SENTENCES = /(?<=\.) (?=\p{Lu})/gu;

interface Named {
  from: number;
  to: number;
  place: Place;
}

/** A pattern of every label of a joint, not as a part of a balloon's name ("A1-A2"). */
export function labelPattern(labels: Iterable<string>): RegExp {
  const longest = [...labels].sort((a, b) => b.length - a.length || (a < b ? -1 : 1));
  const plain = longest.map((label) => label.replace(/[.*+?^${}()|[\]\\]/g, "\\$&"));
  return new RegExp(`(?<![\\p{L}\\p{N}.-])(?:${plain.join("|") || "(?!)"})(?![\\p{L}\\p{N}-])`, "gu");
}

/** What a text names, in its order; places in it count as the browser counts letters. */
export function namedIn(text: string, labels: RegExp, refers: readonly Reference[]): Named[] {
  const letters = [...text];
  const at = (count: number) => letters.slice(0, count).join("").length;
  const steps = refers.map(([from, long, step]): Named => ({ from: at(from), to: at(from + long), place: { screen: "step", what: String(step) } }));
  const joints = [...text.matchAll(labels)].map((found): Named => ({ from: found.index, to: found.index + found[0].length, place: { screen: "find", what: found[0] } }));
  return [...steps, ...joints].sort((a, b) => a.from - b.from);
}

export function reference(app: App, place: Place, ...shown: (Node | string)[]): HTMLElement {
  const link = h("a", { class: "ref", href: hashOf(place) }, ...shown);
  link.addEventListener("click", (event) => {
    event.preventDefault();
    app.follow(place);
  });
  return link;
}

/** The sentences of a text, a line each. */
export function sentences(app: App, text: string, refers: readonly Reference[]): HTMLElement[] {
  const named = namedIn(text, app.labels, refers);
  const ends = [...text.matchAll(SENTENCES)].map((found) => found.index);
  return [...ends, text.length].map((end, i) => {
    const line = h("p", { class: "line" });
    let from = i ? (ends[i - 1] ?? 0) + 1 : 0;
    for (const one of named.filter((each) => each.from >= from && each.to <= end)) {
      line.append(text.slice(from, one.from), reference(app, one.place, text.slice(one.from, one.to)));
      from = one.to;
    }
    line.append(text.slice(from, end));
    return line;
  });
}
