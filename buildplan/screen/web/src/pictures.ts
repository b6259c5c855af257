// The printed booklet's own pictures: hand moves and the joint map. They lie packed in the page
// and are unpacked when the first of them is asked for.
import { h, s } from "./dom";
import { unpacked } from "./unpack";

interface Told {
  drawing: number;
  words: readonly string[];
  alt: string;
}

export type Picture = { width: number; height: number } & Readonly<Record<string, Told | number>>;

export interface Pictures {
  map: readonly Picture[];
  moves: Readonly<Record<string, readonly Picture[]>>;
  looks: readonly string[];
  drawings: readonly string[];
}

const SVG = "http://www.w3.org/2000/svg";
let all: Promise<Pictures | null> | null = null;
let shared: SVGElement | null = null;
const defined = new Set<string>();

/** The pictures, or null where the browser cannot unpack them. */
export function pictures(): Promise<Pictures | null> {
  all ??= Promise.resolve()
    .then(() => JSON.parse(unpacked("pictures")) as Pictures)
    .catch(() => null);
  return all;
}

/** A picture in a language; its words are set as text alone. */
export function drawn(all: Pictures, picture: Picture, language: string): SVGElement {
  const told = (picture[language] ?? Object.values(picture).find((each) => typeof each === "object")) as Told;
  const drawing = all.drawings[told.drawing] ?? "";
  define(all, drawing);
  const made = elementOf(drawing, `0 0 ${picture.width} ${picture.height}`);
  made.querySelectorAll("text").forEach((text, i) => (text.textContent = told.words[i] ?? ""));
  made.setAttribute("role", "img");
  made.setAttribute("aria-label", told.alt);
  made.setAttribute("class", "printed-picture");
  return made;
}

/** The looks that a drawing uses, once in the document. */
function define(all: Pictures, drawing: string): void {
  if (!shared) {
    shared = s("svg", { width: 0, height: 0, class: "looks", "aria-hidden": "true" });
    document.body.append(shared);
  }
  const wanted = [drawing];
  for (let text = wanted.pop(); text !== undefined; text = wanted.pop()) {
    for (const [, id] of text.matchAll(/"#(k\d+)"/g)) {
      if (!id || defined.has(id)) continue;
      defined.add(id);
      const look = all.looks[Number(id.slice(1))] ?? "";
      shared.append(...elementOf(`<g id="${id}">${look}</g>`, "0 0 1 1").childNodes);
      wanted.push(look);
    }
  }
}

function elementOf(inside: string, box: string): SVGElement {
  const parsed = new DOMParser().parseFromString(`<svg xmlns="${SVG}" viewBox="${box}">${inside}</svg>`, "image/svg+xml");
  return document.importNode(parsed.documentElement, true) as unknown as SVGElement;
}

/** A place for pictures that are there as soon as they are unpacked; words where they cannot be. */
export function shownLater(without: string, fill: (all: Pictures) => readonly Node[]): HTMLElement {
  const place = h("div", { class: "pictures" });
  void pictures().then((all) => place.replaceChildren(...(all ? fill(all) : [h("p", {}, without)])));
  return place;
}
