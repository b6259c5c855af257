// A joint by its label: where it is, what is tied there, which steps touch it. Also the map.
import type { App } from "../app";
import type { Joint } from "../data";
import { h, s } from "../dom";
import { frame } from "../frame";
import { drawn, pictures, shownLater } from "../pictures";

const REACH = 28; // points of the screen from a joint of the map

export function find(app: App): HTMLElement {
  const { words, page } = app;
  const labels = h("datalist", { id: "labels" }, ...page.piece.joints.map((joint) => h("option", { value: joint.label })));
  const field = h("input", { id: "joint", type: "text", dir: "auto", list: "labels", autocomplete: "off", autocapitalize: "characters", spellcheck: "false", value: app.at.what });
  const found = h("div", { class: "found", "aria-live": "polite" });
  const map = shownLater(words.say("no pictures"), (all) => all.map.map((sheet) => drawn(all, sheet, words.language)));
  const show = () => {
    const asked = field.value.trim();
    if (asked !== app.at.what) app.settle(asked);
    const joint = page.piece.joints.find((each) => each.label.toLowerCase() === asked.toLowerCase());
    found.replaceChildren(...(joint ? told(app, joint) : asked ? [h("p", {}, words.say("no joint", { joint: asked }))] : []));
    picture(app, joint);
    mark(map, joint?.label ?? "");
  };
  const choose = (label: string | undefined) => {
    if (!label) return;
    field.value = label;
    show();
  };
  map.addEventListener("click", (event) => {
    choose(nearest(app, map, event.clientX, event.clientY));
    window.scrollTo({ top: 0 });
  });
  void pictures().then(() => mark(map, field.value));
  field.addEventListener("input", show);
  app.stage.onPick = (body) => choose(body && (app.links.get(body.name)?.start ?? body.name.split("+")[0]));
  app.stage.onTag = choose;
  const title = h("h1", {}, words.say("screen find"));
  app.focus(title);
  show();
  return h(
    "div",
    { class: "columns" },
    frame(app),
    h("div", { class: "told" }, title, h("p", {}, words.say("find how")), h("p", {}, h("label", { for: "joint" }, words.say("joint")), field, labels), found, h("h2", {}, words.say("map")), h("p", {}, words.say("map how")), map),
  );
}

/** The joint of the map under a finger, or just beside it. */
function nearest(app: App, map: HTMLElement, x: number, y: number): string | undefined {
  let best: [number, string] = [REACH, ""];
  map.querySelectorAll("text").forEach((text) => {
    const [label] = jointsAt(text).filter((joint) => app.joints.has(joint));
    if (label === undefined) return;
    const box = text.getBoundingClientRect();
    const away = Math.hypot(box.x + box.width / 2 - x, box.y + box.height / 2 - y);
    if (away < best[0]) best = [away, label];
  });
  return best[1] || undefined;
}

/** The joints that a text of the map names: one, or its likes in equal parts. */
function jointsAt(text: Element): string[] {
  return text.getAttribute("data-joint")?.split(" ") ?? [];
}

/** A ring round a joint wherever the map shows it. */
function mark(map: HTMLElement, label: string): void {
  map.querySelectorAll(".ring").forEach((ring) => ring.remove());
  if (!label) return;
  map.querySelectorAll("text").forEach((text) => {
    if (!jointsAt(text).some((joint) => joint.toLowerCase() === label.toLowerCase())) return;
    const [x, y] = text.getAttribute("transform")?.match(/-?[\d.]+/g)?.slice(-2).map(Number) ?? [];
    text.after(s("circle", { class: "ring", cx: x ?? 0, cy: (y ?? 0) + 3, r: 11 }));
  });
}

function told(app: App, joint: Joint): HTMLElement[] {
  const { words, page } = app;
  const links = joint.links.map((id) => {
    const link = app.links.get(id);
    const end = link?.neck === joint.label ? "neck" : "tail";
    return h("li", {}, words.say(`its ${end}`, { link: id, balloon: app.balloonWords(link?.balloon ?? "") }));
  });
  const lock = page.piece.locks.find((each) => each.joint === joint.place);
  const steps = joint.steps.map((number) => {
    const step = page.piece.steps[number - 1];
    return h("li", {}, h("button", { type: "button", class: "line", onclick: () => app.follow({ screen: "step", what: String(number) }) }, h("span", { class: "number" }, String(number)), words.of(step?.title ?? {})));
  });
  return [
    h("h2", {}, words.say("joint named", { joint: joint.place })),
    h("ul", {}, ...links, lock ? h("li", {}, words.say("its lock", { balloon: app.balloonWords(lock.balloon) })) : null),
    h("h2", {}, words.say("its steps")),
    h("ol", { class: "steps" }, ...steps),
  ];
}

function picture(app: App, joint: Joint | undefined): void {
  const { page, words } = app;
  const links = new Set(joint?.links);
  app.stage.show({
    seat: joint ? { ...page.whole, about: joint.at, across_m: Math.max(page.whole.across_m / 2.5, 1) } : page.whole,
    shown: {
      moment: page.piece.moments.length,
      isNew: (body) => joint !== undefined && (body.isLink ? links.has(body.name) : body.name === joint.place),
      picked: new Set(),
      near: joint ? { about: joint.at, across: Math.max(page.whole.across_m / 2.5, 1), joints: new Set([joint.label]) } : null,
      inColour: !joint,
    },
    tags: joint ? [app.tag(joint.label)] : page.piece.joints.map((each) => app.tag(each.label)),
    ways: [],
    person: null,
    alt: joint ? words.say("joint picture", { joint: joint.label }) : words.say("map picture"),
  });
}
