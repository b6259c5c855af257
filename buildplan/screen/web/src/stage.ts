// One picture of the piece that can be turned, with labels and the way of the work over it.
import { bodyAt, looks, type Body, type Look, type Shown } from "./bodies";
import { AT_THE_SEAT, place, pose, type Pose, type Turned } from "./camera";
import type { Point, Seat } from "./data";
import { h, s } from "./dom";
import type { Ground, Painter } from "./painter";

export interface Tag {
  joint: string;
  at: Point;
  order: number; // 0: without a number
}

export interface Scene {
  seat: Seat;
  shown: Shown;
  tags: readonly Tag[];
  ways: readonly (readonly Tag[])[]; // what each new chain runs through
  person: boolean;
  alt: string;
}

const FIRST_PICTURE = "first picture"; // for tests/bench/bench_screen.py
const TURN = 0.008; // radians to a point of the screen
const KEY_TURN = 0.15;

export class Stage {
  readonly element: HTMLElement;
  onPick: ((body: Body | undefined) => void) | null = null;
  onTurned: ((away: boolean) => void) | null = null;
  private by: Turned = AT_THE_SEAT;
  private scene: Scene | null = null;
  private look: Look[] = [];
  private from: Pose | null = null;
  private waiting = false;
  private readonly over = s("svg", { class: "over", "aria-hidden": "true" });
  private readonly touches = new Map<number, { x: number; y: number }>();
  private moved = 0;

  constructor(
    private readonly bodies: readonly Body[],
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
    this.from = pose(seat, this.by, width, height);
    this.look = looks(this.bodies, shown, this.from, width, height);
    this.painter.paint({
      bodies: this.bodies,
      looks: this.look,
      from: this.from,
      seat,
      width,
      height,
      person: this.scene.person,
      near: shown.near !== null,
      ground: this.ground(),
    });
    this.write(this.from, width, height);
    if (!this.element.dataset["drawn"]) performance.mark(FIRST_PICTURE);
    this.element.dataset["drawn"] = String(Number(this.element.dataset["drawn"] ?? 0) + 1);
  }

  private write(from: Pose, width: number, height: number): void {
    this.over.replaceChildren();
    this.over.setAttribute("viewBox", `0 0 ${width} ${height}`);
    const scene = this.scene;
    if (!scene) return;
    const spot = (tag: Tag) => place(from, tag.at, width, height);
    for (const way of scene.ways.map((each) => each.map(spot))) {
      for (let i = 0; i + 1 < way.length; i++) {
        const [one, other] = [way[i], way[i + 1]];
        if (one && other) this.over.append(arrow(one, other));
      }
    }
    const taken: { x: number; y: number; wide: number }[] = [];
    for (const tag of [...scene.tags].sort((a, b) => b.order - a.order)) {
      const { x, y } = spot(tag);
      if (x < 0 || y < 0 || x > width || y > height) continue;
      const wide = 10 * tag.joint.length + 6;
      const aside = tag.order ? 17 : 7;
      const turned = x + aside + wide > width; // the label stands left of its joint
      const from = turned ? x - wide : x;
      const free = taken.every((other) => Math.abs(other.y - y) > 17 || from > other.x + other.wide || other.x > from + wide);
      if (!free && !tag.order) continue;
      taken.push({ x: from, y, wide });
      const group = s("g", { "data-joint": tag.joint, "data-order": tag.order, transform: `translate(${x.toFixed(1)} ${y.toFixed(1)})` });
      if (tag.order) {
        if (tag.order === 1) group.append(s("circle", { r: 16, class: "begin" }));
        group.append(s("circle", { r: 12, class: "order" }), s("text", { y: 5, class: "number" }, String(tag.order)));
      } else group.append(s("circle", { r: 4, class: "dot" }));
      group.append(s("text", { x: turned ? -aside : aside, y: -8, class: "joint", "text-anchor": turned ? "end" : "start" }, tag.joint));
      this.over.append(group);
    }
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
    if (!before) return;
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

  private pick(event: PointerEvent): void {
    if (!this.onPick || !this.from) return;
    const box = this.element.getBoundingClientRect();
    this.onPick(
      bodyAt(this.bodies, this.look, this.from, event.clientX - box.left, event.clientY - box.top, box.width, box.height),
    );
  }
}

function arrow(one: { x: number; y: number }, other: { x: number; y: number }): SVGElement {
  const away = Math.hypot(other.x - one.x, other.y - one.y) || 1;
  const [x, y] = [(other.x - one.x) / away, (other.y - one.y) / away];
  const gap = Math.min(16, away / 3);
  const start = [one.x + x * gap, one.y + y * gap];
  const end = [other.x - x * gap, other.y - y * gap];
  const [ex, ey] = [end[0] ?? 0, end[1] ?? 0];
  const wing = (turn: number) =>
    `${(ex - 10 * x + turn * 5 * y).toFixed(1)} ${(ey - 10 * y - turn * 5 * x).toFixed(1)}`;
  const line = `M${(start[0] ?? 0).toFixed(1)} ${(start[1] ?? 0).toFixed(1)}L${ex.toFixed(1)} ${ey.toFixed(1)}`;
  const group = s("g", { class: "way" });
  group.append(s("path", { d: line, class: "under" }), s("path", { d: `${line}M${wing(1)}L${ex.toFixed(1)} ${ey.toFixed(1)}L${wing(-1)}` }));
  return group;
}
