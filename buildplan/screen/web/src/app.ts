// The page: which screen is shown, what is kept, and how the reader wants to see it.
import { bodiesOf, type Body } from "./bodies";
import { tickIds } from "./carry";
import type { Joint, Link, Page, Point, Step } from "./data";
import { h } from "./dom";
import { flatPainter } from "./flat";
import { Keeper, merged, type Kept, type Store } from "./keep";
import { burst } from "./screens/burst";
import { film } from "./screens/film";
import { find } from "./screens/find";
import { list } from "./screens/list";
import { more } from "./screens/more";
import { start } from "./screens/start";
import { step } from "./screens/step";
import { Stage, type Tag } from "./stage";
import { webglPainter } from "./webgl";
import { Words } from "./words";

export const SCREENS = { step, list, find, film, burst, more } as const;
export type Screen = keyof typeof SCREENS | "start";
const LONGEST_WAIT = 1000; // milliseconds, where the browser does not tell that it has painted

function store(): Store | null {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
}

function choice(key: string): string | null {
  try {
    return window.localStorage.getItem(`buildplan:${key}`);
  } catch {
    return null;
  }
}

/** Once what is drawn can be seen: making WebGL ready holds up the screen for a while. */
function afterFirstPaint(then: () => void): void {
  let due = true;
  const once = () => {
    if (due) setTimeout(then, 0);
    due = false;
  };
  try {
    new PerformanceObserver((_, observer) => {
      observer.disconnect();
      once();
    }).observe({ type: "paint", buffered: true });
  } catch {
    requestAnimationFrame(() => requestAnimationFrame(once));
  }
  setTimeout(once, LONGEST_WAIT);
}

/** The step that the address names, as the codes of the printed booklet do: #step-12. */
function stepAsked(): number | undefined {
  const found = /#step-(\d+)/.exec(location.hash);
  return found ? Number(found[1]) : undefined;
}

export class App {
  readonly words: Words;
  readonly bodies: Body[];
  readonly stage: Stage;
  readonly joints: ReadonlyMap<string, Joint>;
  readonly links: ReadonlyMap<string, Link>;
  readonly tickIds: readonly string[];
  kept: Kept;
  screen: Screen = "start";
  leave: (() => void) | null = null; // what a screen stops when it is left
  private notice = "";
  private readonly keeper: Keeper;
  private readonly live = h("div", { class: "hidden", role: "status", "aria-live": "polite" });
  private readonly main = h("main", { id: "main", tabindex: "-1" });
  private readonly head = h("header", {});
  private readonly nav = h("nav", {});
  private readonly foot = h("footer", {});
  private readonly printed = h("div", { class: "printed" });
  private awake: { release(): Promise<void> } | null = null;

  constructor(readonly page: Page) {
    const { piece } = page;
    const chosen = choice("language");
    this.words = new Words(page, chosen && piece.languages.includes(chosen) ? chosen : page.language);
    this.bodies = bodiesOf(piece);
    this.joints = new Map(piece.joints.map((joint) => [joint.label, joint]));
    this.links = new Map(piece.links.map((link) => [link.id, link]));
    this.tickIds = tickIds(piece.steps);
    this.stage = new Stage(this.bodies, flatPainter(page), () => this.ground());
    this.keeper = new Keeper(store(), piece.design, Object.values(piece.name)[0] ?? "", () => {
      this.notice = "not kept";
    });
    this.kept = this.keeper.read();
    if (this.keeper.others().length) this.notice = this.notice || "other version";
    this.kept.place = Math.max(1, Math.min(piece.steps.length, stepAsked() ?? this.kept.place));
    this.look("theme", choice("theme") ?? "auto");
    this.look("type", choice("type") ?? "normal");
    document.body.append(this.head, this.main, this.nav, this.foot, this.live, this.printed);
    this.listen();
    this.go(this.kept.read ? "step" : "start");
    afterFirstPaint(() => this.light());
  }

  get step(): Step {
    const found = this.page.piece.steps[this.kept.place - 1];
    if (!found) throw new Error("no such step");
    return found;
  }

  /** Plain shapes are there at once; WebGL takes over when it is ready, where there is one. */
  private light(): void {
    if (location.hash.includes("flat")) return;
    try {
      this.stage.use(webglPainter(this.page, this.bodies));
    } catch {
      return;
    }
  }

  private ground(): { paper: string; pale: number } {
    const dark = getComputedStyle(document.documentElement).getPropertyValue("--dark").trim() === "1";
    return dark ? { paper: "#2a2f36", pale: 0.72 } : { paper: "#f4f2ee", pale: 0.74 };
  }

  // what the reader wants

  look(what: "theme" | "type" | "language", value: string): void {
    if (what === "language") this.words.language = value;
    else document.documentElement.dataset[what] = value;
    try {
      window.localStorage.setItem(`buildplan:${what}`, value);
    } catch {
      this.notice = "not kept";
    }
    this.stage.draw();
  }

  wants(what: "theme" | "type"): string {
    return document.documentElement.dataset[what] ?? "";
  }

  // what is kept

  ticked(id: string): boolean {
    return this.kept.ticks[id]?.[0] ?? false;
  }

  tick(id: string, on: boolean): void {
    this.kept.ticks[id] = [on, Date.now()];
    this.keep();
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

  go(screen: Screen, number?: number): void {
    this.leave?.();
    this.leave = null;
    this.stage.onPick = null;
    this.stage.onTurned = null;
    this.screen = screen;
    if (number !== undefined) {
      this.kept.place = Math.max(1, Math.min(this.page.piece.steps.length, number));
      this.keep();
    }
    this.draw();
    window.scrollTo(0, 0);
    void this.stayAwake(screen === "step" || screen === "film");
  }

  draw(): void {
    const { words, page } = this;
    document.documentElement.lang = words.tag;
    document.title = words.of(page.piece.name);
    const made = this.screen === "start" ? start(this) : SCREENS[this.screen](this);
    this.main.className = this.screen;
    this.main.replaceChildren(...this.notices(), made);
    this.drawHead();
    this.drawNav();
    this.stage.draw();
  }

  say(words: string): void {
    this.live.textContent = words;
  }

  /** Put the reader's place at a heading, so that it is read out and the keyboard is there. */
  focus(element: HTMLElement): void {
    element.setAttribute("tabindex", "-1");
    queueMicrotask(() => element.focus({ preventScroll: true }));
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

  private drawHead(): void {
    const { words, page } = this;
    const brand = page.brand ? `${page.brand.name} · ` : "";
    this.head.replaceChildren(
      h("a", { class: "skip", href: "#main" }, words.say("skip")),
      h("span", { class: "piece" }, `${brand}${words.of(page.piece.name)}`),
      h("button", { type: "button", class: "cautions", onclick: () => this.go("start") }, words.say("cautions")),
    );
    const copy = page.copy;
    const sold = copy ? `${words.say("serial", { serial: copy.serial })}${copy.buyer ? ` · ${words.say("buyer", { buyer: copy.buyer })}` : ""}` : "";
    this.foot.textContent = sold;
    this.foot.hidden = !sold;
  }

  private drawNav(): void {
    const { words } = this;
    this.nav.hidden = !this.kept.read;
    this.nav.setAttribute("aria-label", words.say("screens"));
    const button = (screen: keyof typeof SCREENS) =>
      h(
        "button",
        {
          type: "button",
          "data-screen": screen,
          "aria-current": this.screen === screen ? "page" : undefined,
          onclick: () => this.go(screen),
        },
        words.say(`nav ${screen}`),
      );
    this.nav.replaceChildren(...(Object.keys(SCREENS) as (keyof typeof SCREENS)[]).map(button));
  }

  private listen(): void {
    document.addEventListener("keydown", (event) => {
      const target = event.target as HTMLElement;
      if (this.screen !== "step" || event.altKey || event.ctrlKey || event.metaKey) return;
      if (target.matches("input:not([type=checkbox]), textarea, select, .stage")) return;
      if (event.key === "ArrowRight") this.next(1);
      else if (event.key === "ArrowLeft") this.next(-1);
    });
    this.swipe();
    // what is sticky stands above the other screens' buttons, however high they are
    new ResizeObserver(() => document.documentElement.style.setProperty("--nav", `${this.nav.offsetHeight}px`)).observe(this.nav);
    window.addEventListener("storage", (event) => {
      if (event.key !== this.keeper.key) return;
      this.kept = { ...merged(this.kept, this.keeper.read()) };
      this.notice = "opened twice";
      this.draw();
    });
    window.addEventListener("hashchange", () => {
      const number = stepAsked();
      if (number !== undefined && this.kept.read) this.go("step", number);
    });
    window.addEventListener("beforeprint", () => this.drawPrinted());
    matchMedia("(prefers-color-scheme: dark)").addEventListener("change", () => this.stage.draw());
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState === "visible") void this.stayAwake(this.screen === "step");
    });
  }

  private swipe(): void {
    let from: { x: number; y: number } | null = null;
    this.main.addEventListener("touchstart", (event) => {
      const touch = event.touches[0];
      const free = !(event.target as HTMLElement).closest(".stage, input, textarea");
      from = touch && free ? { x: touch.clientX, y: touch.clientY } : null;
    });
    this.main.addEventListener("touchend", (event) => {
      const touch = event.changedTouches[0];
      if (!from || !touch || this.screen !== "step") return;
      const [x, y] = [touch.clientX - from.x, touch.clientY - from.y];
      if (Math.abs(x) > 60 && Math.abs(x) > 2 * Math.abs(y)) this.next(x < 0 ? 1 : -1);
    });
  }

  next(by: number): void {
    const wanted = this.kept.place + by;
    if (wanted >= 1 && wanted <= this.page.piece.steps.length) this.go("step", wanted);
  }

  private async stayAwake(wanted: boolean): Promise<void> {
    try {
      if (wanted && !this.awake) this.awake = (await navigator.wakeLock?.request("screen")) ?? null;
      else if (!wanted && this.awake) {
        await this.awake.release();
        this.awake = null;
      }
    } catch {
      this.awake = null; // the browser does not let it: the screen goes dark as it always does
    }
  }

  /** On paper: every step's words, with boxes to tick. */
  private drawPrinted(): void {
    const { words, page } = this;
    const steps = page.piece.steps.map((step) =>
      h(
        "section",
        {},
        h("h2", {}, `${step.number}. ${words.of(step.title)}`),
        h("p", {}, words.of(step.text)),
        ...step.turns.map((turn) => h("p", { class: "row" }, `☐ ${words.of(turn.row)}`)),
        h("p", { class: "row" }, `☐ ${words.of(step.check)}`),
      ),
    );
    const cautions = page.cautions.map((one) => h("p", {}, `${words.of(one.signal)} ${words.of(one.topic)}: ${words.of(one.words)}`));
    this.printed.replaceChildren(h("h1", {}, words.of(page.piece.name)), ...cautions, ...steps);
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
