// One picture of the piece that can be turned, with labels and the way of the work over it.
import { bodyAt, looks, type Body, type Look, type Shown } from "./bodies";
import { AT_THE_SEAT, pose, type Pose, type Turned } from "./camera";
import type { Page, Point, Seat } from "./data";
import { h, s } from "./dom";
import { labelAt, tags, tallness, ways, type Tag, type Written } from "./overlay";
import type { Ground, Painter, Subject } from "./painter";
import type { Words } from "./words";

/** Who stands beside the piece, for scale: words, and where the feet are. */
export interface Beside {
  tall: string;
  feet: Point;
}

export function personBeside(page: Page, words: Words): Beside {
  const { person } = page;
  return { tall: words.of(person.tall), feet: [person.foot_x, 0, 0] };
}

export interface Scene {
  seat: Seat;
  shown: Shown;
  tags: readonly Tag[];
  ways: readonly (readonly Tag[])[]; // what each new chain runs through
  person: Beside | null;
  alt: string;
  colours?: ReadonlyMap<Body, string>; // bodies in another colour than their own
  over?: (from: Pose) => SVGElement[]; // what else is drawn over the picture
}

const FIRST_PICTURE = "first picture"; // for tests/bench/bench_screen.py
const TURN = 0.008; // radians to a point of the screen
const KEY_TURN = 0.15;
const KEPT = 56; // points of the screen at the right, for what turns the picture

export class Stage {
  readonly element: HTMLElement;
  onPick: ((body: Body | undefined) => void) | null = null;
  onTurned: ((away: boolean) => void) | null = null;
  onTag: ((joint: string) => void) | null = null;
  /** Told of a tap before anything under it is looked for; answers whether that was all. */
  onPoint: ((x: number, y: number, from: Pose) => boolean) | null = null;
  /** Told where a mouse is, before what is under it. */
  onAim: ((x: number, y: number, from: Pose) => void) | null = null;
  /** Told of what a mouse is over. */
  onOver: ((body: Body | undefined) => void) | null = null;
  private by: Turned = AT_THE_SEAT;
  private scene: Scene | null = null;
  private look: Look[] = [];
  private from: Pose | null = null;
  private waiting = false;
  private readonly over = s("svg", { class: "over", "aria-hidden": "true" });
  private written: readonly Written[] = [];
  private readonly touches = new Map<number, { x: number; y: number }>();
  private moved = 0;

  constructor(
    private bodies: readonly Body[],
    private painter: Painter,
    private readonly ground: () => Ground,
  ) {
    painter.canvas.setAttribute("aria-hidden", "true");
    this.element = h("div", { class: "stage", role: "img", tabindex: "0" }, painter.canvas, this.over as unknown as Node);
    this.element.dataset["painter"] = painter.kind;
    new ResizeObserver(() => this.draw()).observe(this.element);
    this.listen();
  }

  /** Draw with another painter from now on. */
  use(painter: Painter): void {
    painter.canvas.setAttribute("aria-hidden", "true");
    this.painter.canvas.replaceWith(painter.canvas);
    this.painter = painter;
    this.element.dataset["painter"] = painter.kind;
    this.draw();
  }

  /** Show another piece from now on; what is seen of it is told by `show`. */
  take(subject: Subject, bodies: readonly Body[]): void {
    this.bodies = bodies;
    this.look = [];
    this.painter.take(subject, bodies);
  }

  show(scene: Scene, keep = false): void {
    this.scene = scene;
    if (!keep) this.by = AT_THE_SEAT;
    this.element.setAttribute("aria-label", scene.alt);
    this.onTurned?.(this.by !== AT_THE_SEAT);
    this.draw();
  }

  toTheSeat(): void {
    this.by = AT_THE_SEAT;
    this.onTurned?.(false);
    this.draw();
  }

  turn(round: number, over: number, near = 1): void {
    this.by = {
      round: this.by.round + round,
      over: Math.max(-1.6, Math.min(1.6, this.by.over + over)),
      near: Math.max(0.4, Math.min(6, this.by.near * near)),
    };
    this.onTurned?.(true);
    this.draw();
  }

  /** Draw when the browser next does, once. */
  draw(): void {
    if (this.waiting) return;
    this.waiting = true;
    requestAnimationFrame(() => {
      this.waiting = false;
      this.paint();
    });
  }

  paint(): void {
    const { clientWidth: width, clientHeight: height } = this.element;
    if (!this.scene || !width || !height) return;
    const { seat, shown } = this.scene;
    this.from = pose(seat, this.by, width, height, KEPT);
    this.look = looks(this.bodies, shown, this.from);
    this.painter.paint({
      bodies: this.bodies,
      looks: this.look,
      from: this.from,
      seat,
      person: this.scene.person !== null,
      near: shown.near !== null,
      ground: this.ground(),
      colours: this.scene.colours ?? null,
    });
    this.write(this.scene, this.from);
    if (!this.element.dataset["drawn"]) performance.mark(FIRST_PICTURE);
    this.element.dataset["drawn"] = String(Number(this.element.dataset["drawn"] ?? 0) + 1);
  }

  private write(scene: Scene, from: Pose): void {
    const { drawn, written } = tags(scene.tags, from);
    this.written = written;
    const person = scene.person ? [tallness(scene.person.tall, scene.person.feet, from)] : [];
    this.over.setAttribute("viewBox", `0 0 ${from.width} ${from.height}`);
    this.over.replaceChildren(...(scene.over?.(from) ?? []), ...ways(scene.ways, from), ...drawn, ...person);
  }

  private listen(): void {
    const { element } = this;
    element.addEventListener("pointerdown", (event) => {
      this.touches.set(event.pointerId, { x: event.clientX, y: event.clientY });
      this.moved = 0;
      element.setPointerCapture(event.pointerId);
    });
    element.addEventListener("pointermove", (event) => this.drag(event));
    const lift = (event: PointerEvent) => {
      this.touches.delete(event.pointerId);
      if (event.type === "pointerup" && this.moved < 6) this.pick(event);
    };
    element.addEventListener("pointerup", lift);
    element.addEventListener("pointercancel", lift);
    element.addEventListener("pointerleave", () => this.onOver?.(undefined));
    element.addEventListener(
      "wheel",
      (event) => {
        if (!event.ctrlKey && document.activeElement !== element) return;
        event.preventDefault();
        this.turn(0, 0, Math.exp(-event.deltaY / 500));
      },
      { passive: false },
    );
    element.addEventListener("keydown", (event) => this.press(event));
  }

  private drag(event: PointerEvent): void {
    const before = this.touches.get(event.pointerId);
    if (!before) {
      if (event.pointerType !== "mouse") return;
      if (this.from) this.onAim?.(...this.spot(event), this.from);
      this.onOver?.(this.under(event));
      return;
    }
    const x = event.clientX - before.x;
    const y = event.clientY - before.y;
    this.moved += Math.abs(x) + Math.abs(y);
    const other = [...this.touches].find(([id]) => id !== event.pointerId)?.[1];
    this.touches.set(event.pointerId, { x: event.clientX, y: event.clientY });
    if (other) {
      const was = Math.hypot(before.x - other.x, before.y - other.y);
      const is = Math.hypot(event.clientX - other.x, event.clientY - other.y);
      if (was > 10) this.turn(0, 0, is / was);
    } else this.turn(-x * TURN, y * TURN);
  }

  private press(event: KeyboardEvent): void {
    const moves: Record<string, [number, number, number]> = {
      ArrowLeft: [KEY_TURN, 0, 1],
      ArrowRight: [-KEY_TURN, 0, 1],
      ArrowUp: [0, -KEY_TURN, 1],
      ArrowDown: [0, KEY_TURN, 1],
      "+": [0, 0, 1.2],
      "-": [0, 0, 1 / 1.2],
    };
    const move = moves[event.key];
    if (move) this.turn(...move);
    else if (event.key === "Home") this.toTheSeat();
    else return;
    event.preventDefault();
    event.stopPropagation();
  }

  /** A tap: on a label, else on a balloon. */
  private pick(event: PointerEvent): void {
    if (!this.from) return;
    const [x, y] = this.spot(event);
    if (this.onPoint?.(x, y, this.from)) return;
    const label = labelAt(this.written, x, y);
    if (label !== undefined && this.onTag) this.onTag(label);
    else this.onPick?.(this.under(event));
  }

  private under(event: PointerEvent): Body | undefined {
    return this.from ? bodyAt(this.bodies, this.look, this.from, ...this.spot(event)) : undefined;
  }

  private spot(event: PointerEvent): [number, number] {
    const box = this.element.getBoundingClientRect();
    return [event.clientX - box.left, event.clientY - box.top];
  }
}
