// The picture of the open piece: one stage for as long as the page is open, on which one shape
// after another is shown from where the reader has turned it to.
import { bodiesOf, type Body } from "../../bodies";
import type { Pose } from "../../camera";
import { flatPainter } from "../../flat";
import type { Tag } from "../../overlay";
import { afterFirstPaint, groundNow } from "../../painter";
import { Stage, type Scene } from "../../stage";
import { webglPainter } from "../../webgl";
import type { Shown } from "../contract";

const ALL = Number.MAX_SAFE_INTEGER; // a moment after all work
const FLAT = typeof location !== "undefined" && location.search.includes("flat"); // for tests: WebGL by software takes long

/** What is to be seen of the piece. */
export interface Seen {
  alt: string;
  moment: number | null;
  lying: boolean;
  person: string | null; // how tall, in words; nobody where null
  labels: boolean;
  lit: readonly string[]; // joints that are pointed at
  meant: readonly string[]; // links that are
  colours: ReadonlyMap<string, string>; // links in another colour than their own
  over: (from: Pose) => SVGElement[];
}

export class View {
  readonly stage: Stage;
  private shown: Shown;
  private bodies: Body[];
  private name = "";
  private seen: Seen | null = null;

  constructor(name: string, shown: Shown) {
    this.name = name;
    this.shown = shown;
    this.bodies = bodiesOf(shown.piece);
    this.stage = new Stage(this.bodies, flatPainter(shown), groundNow);
    if (!FLAT) afterFirstPaint(() => this.light());
    matchMedia("(prefers-color-scheme: dark)").addEventListener("change", () => this.stage.draw());
  }

  private light(): void {
    try {
      this.stage.use(webglPainter(this.shown, this.bodies));
    } catch {
      return; // no WebGL here: plain shapes stay
    }
  }

  /** Show another shape; that of the same piece is seen from the side that it is turned to. */
  take(name: string, shown: Shown): void {
    const other = name !== this.name;
    if (!other && shown === this.shown) return;
    this.name = name;
    this.shown = shown;
    this.bodies = bodiesOf(shown.piece);
    this.stage.take(shown, this.bodies);
    if (other) this.stage.toTheSeat();
    if (this.seen) this.show(this.seen);
  }

  body(link: string): Body | undefined {
    return this.bodies.find((body) => body.isLink && body.name === link);
  }

  show(seen: Seen): void {
    this.seen = seen;
    this.stage.show(this.scene(seen), true);
  }

  private scene(seen: Seen): Scene {
    const { shown, bodies } = this;
    const lit = new Set(seen.lit);
    const meant = new Set(seen.meant);
    const at = seen.moment ?? ALL;
    return {
      seat: { ...(seen.person !== null ? shown.beside : shown.whole), lying: seen.lying },
      shown: {
        moment: at,
        isNew: (body) => body.moment === seen.moment,
        picked: new Set(bodies.filter((body) => (body.isLink ? meant.has(body.name) : body.ends.some((joint) => lit.has(joint))))),
        near: null,
        inColour: true,
      },
      tags: this.tags(seen, lit),
      ways: [],
      person: seen.person === null ? null : { tall: seen.person, feet: [shown.person.foot_x, 0, 0] },
      alt: seen.alt,
      colours: this.coloured(seen.colours),
      over: seen.over,
    };
  }

  private tags(seen: Seen, lit: ReadonlySet<string>): Tag[] {
    return this.shown.piece.joints
      .filter(({ label }) => seen.labels || lit.has(label))
      .map(({ label, at }) => ({ joint: label, at, order: 0 }));
  }

  /** Nothing in another colour is told as one and the same nothing: the painter looks for changes. */
  private coloured(colours: ReadonlyMap<string, string>): Map<Body, string> {
    if (colours.size === 0) return NO_COLOURS;
    return new Map(this.bodies.flatMap((body): [Body, string][] => {
      const colour = body.isLink ? colours.get(body.name) : undefined;
      return colour === undefined ? [] : [[body, colour]];
    }));
  }
}

const NO_COLOURS: Map<Body, string> = new Map();
let view: View | null = null;

/** The view with a shape on it. */
export function viewOf(name: string, shown: Shown): View {
  if (view) view.take(name, shown);
  else view = new View(name, shown);
  return view;
}
