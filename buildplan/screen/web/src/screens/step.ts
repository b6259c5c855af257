// One step: its picture from the builder's seat, its words, its rows to tick.
import type { App } from "../app";
import type { Body } from "../bodies";
import type { Step, Turn } from "../data";
import { h } from "../dom";
import { drawn, shownLater } from "../pictures";

let chosen = { step: 0, turn: 0 };
let allLabels = false;
let since = 0; // when the watch was started
let watched = 0; // the step that is timed

export function step(app: App): HTMLElement {
  const { words, page } = app;
  const { steps } = page.piece;
  const now = app.step;
  if (chosen.step !== now.number) chosen = { step: now.number, turn: firstLeft(app, now) };
  picture(app, now);
  const title = h("h1", {}, h("span", { class: "count" }, words.say("step of", { number: now.number, count: steps.length })), h("span", { class: "stage-name" }, words.of(page.piece.stages[now.stage] ?? {})), words.of(now.title));
  app.focus(title);
  app.say(`${words.say("step of", { number: now.number, count: steps.length })}: ${words.of(now.title)}`);
  return h(
    "div",
    { class: "columns" },
    h("div", { class: "picture" }, app.stage.element, tools(app, now)),
    h(
      "div",
      { class: "told" },
      title,
      ...words.of(now.text).split(/(?<=\.) (?=\p{Lu})/u).map((line) => h("p", { class: "line" }, line)),
      rows(app, now),
      moves(app, now),
      h("details", { class: "timing" }, h("summary", {}, words.say("minutes and notes")), now.work[now.kind] ? timing(app, now) : null, note(app, now)),
    ),
    h(
      "div",
      { class: "go" },
      h("button", { type: "button", class: "large back", disabled: now.number === 1, onclick: () => app.next(-1) }, words.say("back")),
      h("button", { type: "button", class: "large next", disabled: now.number === steps.length, onclick: () => app.next(1) }, words.say("next")),
    ),
  );
}

function firstLeft(app: App, now: Step): number {
  const left = now.turns.findIndex((_, turn) => !app.ticked(`t${now.number}.${turn}`));
  return Math.max(left, 0);
}

function picture(app: App, now: Step, keep = false): void {
  const turn = now.turns[chosen.turn] ?? now.turns[0];
  if (!turn) return;
  const brings = turn.links.length + turn.locks.length > 0;
  const readies = !brings && turn.readies.length + turn.ready_locks.length > 0;
  const links = new Set(readies ? turn.readies : turn.links);
  const locks = new Set(readies ? turn.ready_locks : turn.locks);
  const isNew = (body: Body) => (brings || readies ? (body.isLink ? links : locks).has(body.name) : onlyLaid(now, turn));
  const near = ["brace", "single", "join", "lock", "settle"].includes(now.kind);
  const order = [...new Set([...turn.ways.flat(), ...turn.joints])];
  const tags = near ? order.map((joint, i) => app.tag(joint, i + 1)) : [];
  const ways = turn.ways.map((way) => way.map((joint) => app.tag(joint)));
  const row = app.words.of(turn.row);
  const labels = allLabels ? [...app.joints.keys()].filter((joint) => !turn.joints.includes(joint)).map((joint) => app.tag(joint)) : [];
  app.stage.show(
    {
      seat: readies ? app.page.whole : turn.seat,
      shown: {
        moment: readies ? app.page.piece.moments.length : turn.moment,
        isNew,
        picked: new Set(),
        near: near ? { about: turn.seat.about, across: turn.seat.across_m, joints: new Set(turn.joints) } : null,
      },
      tags: [...labels, ...tags],
      ways,
      person: now.kind === "stand up",
      alt: app.words.say("step picture", { title: app.words.of(now.title), row }),
    },
    keep,
  );
}

/** Whether what lies on the floor is what a step without new parts is about. */
function onlyLaid(now: Step, turn: Turn): boolean {
  return ["lay", "inspect", "stand up", "turn over", "close ring"].includes(now.kind) && turn.links.length === 0;
}

function tools(app: App, now: Step): HTMLElement {
  const { words } = app;
  const back = h("button", { type: "button", class: "seat", hidden: true, onclick: () => app.stage.toTheSeat() }, words.say("to the seat"));
  app.stage.onTurned = (away) => (back.hidden = !away);
  const labels = h(
    "button",
    {
      type: "button",
      "aria-pressed": String(allLabels),
      onclick: () => {
        allLabels = !allLabels;
        labels.setAttribute("aria-pressed", String(allLabels));
        picture(app, now, true);
      },
    },
    words.say("all labels"),
  );
  const near = h("button", { type: "button", "aria-label": words.say("nearer"), onclick: () => app.stage.turn(0, 0, 1.3) }, "+");
  const far = h("button", { type: "button", "aria-label": words.say("farther"), onclick: () => app.stage.turn(0, 0, 1 / 1.3) }, "−");
  return h("div", { class: "tools" }, labels, near, far, back);
}

function rows(app: App, now: Step): HTMLElement {
  const { words } = app;
  const row = (turn: Turn, i: number) => {
    const id = `t${now.number}.${i}`;
    const show = () => {
      chosen.turn = i;
      picture(app, now);
      list.querySelectorAll("li").forEach((item, at) => item.toggleAttribute("data-shown", at === i));
    };
    const several = now.turns.length > 1;
    return h(
      "li",
      { "data-shown": i === chosen.turn },
      tickBox(app, id, words.of(turn.row) || words.of(turn.name) || words.of(now.title), () => several && show()),
      several ? h("button", { type: "button", class: "show", onclick: show, "aria-label": words.say("show", { name: words.of(turn.name) }) }, words.say("show short")) : null,
    );
  };
  const list = h("ul", { class: "ticks", "aria-label": words.say("rows") });
  list.append(...now.turns.map(row));
  const check = words.of(now.check);
  return h("div", {}, list, h("ul", { class: "ticks check" }, h("li", {}, tickBox(app, `c${now.number}`, `${words.say("check")} ${check}`, () => undefined))));
}

/** How hands do it, as in print; open where it is learned. */
function moves(app: App, now: Step): HTMLElement | null {
  const { words, page } = app;
  if (!page.moves.includes(now.number)) return null;
  const place = shownLater((all) => (all.moves[now.number] ?? []).map((move) => drawn(all, move, words.language)));
  return h("details", { class: "moves", open: page.piece.edition !== "crew" }, h("summary", {}, words.say("how it is done")), place);
}

function tickBox(app: App, id: string, text: string, then: () => void): HTMLElement {
  const box = h("input", { type: "checkbox", id });
  box.checked = app.ticked(id);
  box.addEventListener("change", () => {
    app.tick(id, box.checked);
    then();
  });
  return h("label", { for: id }, box, h("span", {}, text));
}

function timing(app: App, now: Step): HTMLElement {
  const { words } = app;
  const field = h("input", { type: "number", min: 0, step: "any", inputmode: "decimal", id: "minutes" });
  const had = app.kept.minutes[now.number];
  if (had) field.value = String(had);
  field.addEventListener("change", () => {
    const minutes = Number(field.value);
    if (Number.isFinite(minutes) && minutes > 0) app.kept.minutes[now.number] = minutes;
    else delete app.kept.minutes[now.number];
    app.keep();
  });
  const running = () => since > 0 && watched === now.number;
  const watch = h("button", { type: "button" }, words.say(running() ? "stop watch" : "start watch"));
  watch.addEventListener("click", () => {
    if (running()) {
      const took = (Date.now() - since) / 60000 + (app.kept.minutes[now.number] ?? 0);
      since = 0;
      field.value = took.toFixed(2);
      field.dispatchEvent(new Event("change"));
    } else [since, watched] = [Date.now(), now.number];
    watch.textContent = words.say(running() ? "stop watch" : "start watch");
  });
  return h("p", {}, h("label", { for: "minutes" }, words.say("minutes taken")), field, watch);
}

function note(app: App, now: Step): HTMLElement {
  const area = h("textarea", { id: "note", rows: 3, maxlength: 2000 });
  area.value = app.kept.notes[now.number] ?? "";
  area.addEventListener("change", () => {
    if (area.value) app.kept.notes[now.number] = area.value;
    else delete app.kept.notes[now.number];
    app.keep();
  });
  return h("p", {}, h("label", { for: "note" }, app.words.say("note")), area);
}
