// The page: which screen is shown, what is kept, and how the reader wants to see it.
import { stayAwake } from "./awake";
import { bodiesOf, type Body } from "./bodies";
import { tickIds } from "./carry";
import { choose, chosen, store, type Choice } from "./choices";
import type { Joint, Link, Page, Point, Step } from "./data";
import { h } from "./dom";
import { flatPainter } from "./flat";
import { onArrows, onSwipes } from "./gestures";
import { Keeper, merged, type Kept } from "./keep";
import type { Tag } from "./overlay";
import { afterFirstPaint, groundNow } from "./painter";
import { onPaper } from "./paper";
import { labelPattern } from "./refer";
import { hashOf, placeOf, type Place, type Screen } from "./route";
import { burst } from "./screens/burst";
import { film } from "./screens/film";
import { find } from "./screens/find";
import { list } from "./screens/list";
import { more } from "./screens/more";
import { start } from "./screens/start";
import { step } from "./screens/step";
import { Stage } from "./stage";
import { copyWords, headOf, navOf, wayBack } from "./surround";
import { webglPainter } from "./webgl";
import { Words } from "./words";

const DRAWN: Readonly<Record<Screen, (app: App) => HTMLElement>> = { start, step, list, find, film, burst, more };
const START: Place = { screen: "start", what: "" };
const FLAT = location.search.includes("flat"); // for tests: making WebGL ready by software takes long

export class App {
  readonly words: Words;
  readonly bodies: Body[];
  readonly stage: Stage;
  readonly joints: ReadonlyMap<string, Joint>;
  readonly links: ReadonlyMap<string, Link>;
  readonly labels: RegExp;
  readonly tickIds: readonly string[];
  kept: Kept;
  at: Place = START;
  leave: (() => void) | null = null; // what a screen stops when it is left
  private from: Place | null = null; // where a reference was followed from
  private notice = "";
  private readonly keeper: Keeper;
  private readonly live = h("div", { class: "hidden", role: "status", "aria-live": "polite" });
  private readonly main = h("main", { id: "main", tabindex: "-1" });
  private readonly head = h("header", {});
  private readonly nav = h("nav", {});
  private readonly foot = h("footer", {});
  private readonly printed = h("div", { class: "printed" });

  constructor(readonly page: Page) {
    const { piece } = page;
    const language = chosen("language");
    this.words = new Words(page, language && piece.languages.includes(language) ? language : page.language);
    this.bodies = bodiesOf(piece);
    this.joints = new Map(piece.joints.map((joint) => [joint.label, joint]));
    this.links = new Map(piece.links.map((link) => [link.id, link]));
    this.labels = labelPattern(this.joints.keys());
    this.tickIds = tickIds(piece.steps);
    this.stage = new Stage(this.bodies, flatPainter(page), groundNow);
    this.keeper = new Keeper(store(), piece.design, Object.values(piece.name)[0] ?? "", () => {
      this.notice = "not kept";
    });
    this.kept = this.keeper.read();
    if (this.keeper.others().length) this.notice = this.notice || "other version";
    this.dress("theme", chosen("theme") ?? "auto");
    this.dress("type", chosen("type") ?? "normal");
    if (page.brand) document.documentElement.style.setProperty("--brand", page.brand.colour);
    document.body.append(this.head, this.main, this.nav, this.foot, this.live, this.printed);
    this.listen();
    const asked = placeOf(location.hash);
    if (asked?.screen === "step") this.kept.place = this.within(Number(asked.what));
    this.enter(this.kept.read ? (asked ?? this.placeOfStep()) : START, true);
    afterFirstPaint(() => this.light());
  }

  get step(): Step {
    const found = this.page.piece.steps[this.kept.place - 1];
    if (!found) throw new Error("no such step");
    return found;
  }

  /** Plain shapes are there at once; WebGL takes over when it is ready, where there is one. */
  private light(): void {
    if (FLAT) return;
    try {
      this.stage.use(webglPainter(this.page, this.bodies));
    } catch {
      return;
    }
  }

  // what the reader wants

  look(what: Choice, value: string): void {
    if (what === "language") this.words.language = value;
    else this.dress(what, value);
    if (!choose(what, value)) this.notice = "not kept";
    this.stage.draw();
  }

  private dress(what: "theme" | "type", value: string): void {
    document.documentElement.dataset[what] = value;
  }

  wants(what: "theme" | "type"): string {
    return document.documentElement.dataset[what] ?? "";
  }

  // what is kept

  ticked(id: string): boolean {
    return this.kept.ticks[id]?.[0] ?? false;
  }

  tick(ids: readonly string[], on: boolean): void {
    for (const id of ids) this.kept.ticks[id] = [on, Date.now()];
    this.keep();
    this.drawProgress();
  }

  keep(): void {
    const before = this.notice;
    this.kept = this.keeper.write(this.kept);
    if (this.notice !== before) this.tellNotice();
  }

  clear(): void {
    this.keeper.clear();
    this.kept = { ...this.keeper.read(), read: true };
    this.keep();
  }

  /** Whether everything of a step is ticked. */
  done(step: Step): boolean {
    return step.turns.every((_, turn) => this.ticked(`t${step.number}.${turn}`)) && this.ticked(`c${step.number}`);
  }

  // moving about

  go(screen: Screen, what: string | number = ""): void {
    this.from = null;
    this.enter({ screen, what: String(what) });
  }

  /** Go where something refers to; the reader can come back from there. */
  follow(place: Place): void {
    const from = this.at.screen === "step" ? this.placeOfStep() : this.at;
    this.enter(place, false, from);
  }

  next(by: number): void {
    const wanted = this.kept.place + by;
    if (this.within(wanted) !== wanted) return;
    this.from = null;
    this.enter({ screen: "step", what: String(wanted) }, true);
  }

  /** Say that the screen now shows something else, without drawing it again. */
  settle(what: string): void {
    this.at = { ...this.at, what };
    location.replace(hashOf(this.at));
  }

  private enter(place: Place, instead = false, from: Place | null = null): void {
    this.leave?.();
    this.leave = null;
    this.stage.onPick = null;
    this.stage.onTurned = null;
    this.stage.onTag = (joint) => this.follow({ screen: "find", what: joint });
    this.from = from;
    if (place.screen === "step") {
      this.kept.place = this.within(Number(place.what) || this.kept.place);
      this.at = this.placeOfStep();
      this.keep();
    } else this.at = place;
    const hash = hashOf(this.at);
    if (location.hash !== hash && instead) location.replace(hash || "#");
    else if (location.hash !== hash) location.hash = hash;
    this.draw();
    if (!place.what || place.screen !== "list") window.scrollTo(0, 0);
    void stayAwake(this.hands());
  }

  private placeOfStep(): Place {
    return { screen: "step", what: String(this.kept.place) };
  }

  private within(number: number): number {
    return Math.max(1, Math.min(this.page.piece.steps.length, Math.trunc(number) || 1));
  }

  /** Whether hands are at work on what is shown. */
  private hands(): boolean {
    return ["step", "film", "burst"].includes(this.at.screen);
  }

  draw(): void {
    const { words, page } = this;
    document.documentElement.lang = words.tag;
    document.title = words.of(page.piece.name);
    const made = DRAWN[this.at.screen](this);
    this.main.className = this.at.screen;
    const { from } = this;
    const back = from ? [wayBack(this, from, () => this.enter(from))] : [];
    this.main.replaceChildren(...this.notices(), ...back, made);
    this.head.replaceChildren(...headOf(this, () => this.main.focus()));
    this.nav.replaceChildren(...navOf(this));
    this.nav.hidden = !this.kept.read;
    this.nav.setAttribute("aria-label", words.say("screens"));
    this.foot.textContent = copyWords(this);
    this.foot.hidden = !page.copy;
    this.drawProgress();
    this.stage.draw();
  }

  say(words: string): void {
    this.live.textContent = words;
  }

  /** Put the reader's place at a heading, so that it is read out and the keyboard is there. */
  focus(element: HTMLElement, scroll = false): void {
    element.setAttribute("tabindex", "-1");
    queueMicrotask(() => {
      element.focus({ preventScroll: true });
      if (scroll) element.scrollIntoView({ block: "start" });
    });
  }

  private notices(): HTMLElement[] {
    const { words } = this;
    const found: HTMLElement[] = [];
    if (this.page.piece.draft) found.push(h("p", { class: "notice draft" }, words.say("draft")));
    if (this.notice) found.push(h("p", { class: "notice", role: "status" }, words.say(this.notice)));
    return found;
  }

  private tellNotice(): void {
    this.say(this.words.say(this.notice));
    if (!this.main.querySelector(".notice[role=status]")) this.main.prepend(...this.notices().slice(-1));
  }

  /** How much of the work is ticked, as a line under the head. */
  private drawProgress(): void {
    const done = this.tickIds.filter((id) => this.ticked(id)).length / Math.max(this.tickIds.length, 1);
    this.head.querySelector<HTMLElement>(".progress i")?.style.setProperty("width", `${100 * done}%`);
  }

  private listen(): void {
    const on = (by: 1 | -1) => this.at.screen === "step" && this.next(by);
    onArrows(on);
    onSwipes(this.main, on);
    // what is sticky stands above the other screens' buttons, however high they are
    new ResizeObserver(() => document.documentElement.style.setProperty("--nav", `${this.nav.offsetHeight}px`)).observe(this.nav);
    window.addEventListener("storage", (event) => {
      if (event.key !== this.keeper.key) return;
      this.kept = { ...merged(this.kept, this.keeper.read()) };
      this.notice = "opened twice";
      this.draw();
    });
    window.addEventListener("hashchange", () => {
      const place = placeOf(location.hash) ?? START;
      if (this.kept.read && location.hash !== hashOf(this.at)) this.enter(place, true);
    });
    window.addEventListener("beforeprint", () => this.printed.replaceChildren(...onPaper(this)));
    matchMedia("(prefers-color-scheme: dark)").addEventListener("change", () => this.stage.draw());
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState === "visible") void stayAwake(this.hands());
    });
  }

  // what pictures say

  tag(joint: string, order = 0): Tag {
    const at: Point = this.joints.get(joint)?.at ?? [0, 0, 0];
    return { joint, at, order };
  }

  balloonWords(key: string): string {
    const balloon = this.page.piece.balloons.find((each) => each.key === key);
    if (!balloon) return key;
    return this.words.say(balloon.kind === "link" ? "a link" : "a round", {
      colour: this.words.of(balloon.label),
      size: this.words.of(balloon.size),
    });
  }
}
