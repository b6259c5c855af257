// One step: its picture from the builder's seat, its words, its rows to tick.
import type { App } from "../app";
import type { Step, Turn } from "../data";
import { h } from "../dom";
import { frame } from "../frame";
import { sign } from "../icons";
import { drawn, shownLater } from "../pictures";
import { reference, sentences } from "../refer";
import { personBeside } from "../stage";

// kinds of work that are seen close by, from before the joints
const CLOSE_BY = new Set(["brace", "single", "join", "lock", "settle"]);
let chosen = { step: 0, turn: 0 };
let allLabels = false;
let since = 0; // when the watch was started
let watched = 0; // the step that is timed

export function step(app: App): HTMLElement {
  const { words } = app;
  const now = app.step;
  if (chosen.step !== now.number) chosen = { step: now.number, turn: firstLeft(app, now) };
  picture(app, now);
  const labels = {
    shown: allLabels,
    turn: () => {
      allLabels = !allLabels;
      picture(app, now, true);
      return allLabels;
    },
  };
  const title = h("h1", {}, words.of(now.title));
  app.focus(title);
  const where = words.say("step of", { number: now.number, count: app.page.piece.steps.length });
  app.say(`${where}: ${words.of(now.title)}`);
  const stage = reference(app, { screen: "list", what: now.stage }, words.of(app.page.piece.stages[now.stage] ?? {}));
  return h(
    "div",
    { class: "columns" },
    frame(app, labels),
    h(
      "div",
      { class: "told" },
      h("p", { class: "where" }, h("span", { class: "count" }, where), stage),
      title,
      h("div", { class: "text" }, ...sentences(app, words.of(now.text), now.refers[words.language] ?? [])),
      rows(app, now),
      moves(app, now),
      h("details", { class: "timing" }, h("summary", {}, words.say("minutes and notes")), now.work[now.kind] ? timing(app, now) : null, note(app, now)),
    ),
    onward(app, now),
  );
}

/** Back and on; after the last step, to the list of all. */
function onward(app: App, now: Step): HTMLElement {
  const { words, page } = app;
  const last = now.number === page.piece.steps.length;
  const on = last ? () => app.go("list") : () => app.next(1);
  return h(
    "div",
    { class: "go" },
    h("button", { type: "button", class: "large back", disabled: now.number === 1, onclick: () => app.next(-1) }, sign("back"), words.say("back")),
    h("button", { type: "button", class: "large next", onclick: on }, words.say(last ? "nav list" : "next"), sign(last ? "list" : "next")),
  );
}

function firstLeft(app: App, now: Step): number {
  const left = now.turns.findIndex((_, turn) => !app.ticked(`t${now.number}.${turn}`));
  return Math.max(left, 0);
}

/** What a turn brings into the piece; else what it makes ready for later. */
function handled(turn: Turn): { links: ReadonlySet<string>; locks: ReadonlySet<string>; later: boolean } {
  const later = turn.links.length + turn.locks.length === 0 && turn.readies.length + turn.ready_locks.length > 0;
  return { links: new Set(later ? turn.readies : turn.links), locks: new Set(later ? turn.ready_locks : turn.locks), later };
}

function picture(app: App, now: Step, keep = false): void {
  const { page, words } = app;
  const turn = now.turns[chosen.turn] ?? now.turns[0];
  if (!turn) return;
  const { links, locks, later } = handled(turn);
  const nothing = links.size + locks.size === 0;
  const near = CLOSE_BY.has(now.kind);
  const up = now.kind === "stand up";
  const order = [...new Set([...turn.ways.flat(), ...turn.joints])];
  const numbered = near && turn.ways.length > 0;
  const tags = near || nothing ? order.map((joint, i) => app.tag(joint, numbered ? i + 1 : 0)) : [];
  const others = allLabels ? [...app.joints.keys()].filter((joint) => !order.includes(joint)).map((joint) => app.tag(joint)) : [];
  app.stage.show(
    {
      seat: up ? page.beside : later ? page.whole : turn.seat,
      shown: {
        moment: later ? page.piece.moments.length : turn.moment,
        isNew: (body) => (body.isLink ? links : locks).has(body.name),
        picked: new Set(),
        near: near ? { about: turn.seat.about, across: turn.seat.across_m, joints: new Set(turn.joints) } : null,
        inColour: nothing && !near,
      },
      tags: [...tags, ...others],
      ways: turn.ways.map((way) => way.map((joint) => app.tag(joint))),
      person: up ? personBeside(page, words) : null,
      alt: words.say("step picture", { title: words.of(now.title), row: words.of(turn.row) }),
    },
    keep,
  );
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
  const place = shownLater(words.say("no pictures"), (all) => (all.moves[now.number] ?? []).map((move) => drawn(all, move, words.language)));
  return h("details", { class: "moves", open: page.piece.edition !== "crew" }, h("summary", {}, words.say("how it is done")), place);
}

function tickBox(app: App, id: string, text: string, then: () => void): HTMLElement {
  const box = h("input", { type: "checkbox", id });
  box.checked = app.ticked(id);
  box.addEventListener("change", () => {
    app.tick([id], box.checked);
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
  const area = h("textarea", { id: "note", rows: 3, maxlength: 2000, dir: "auto" });
  area.value = app.kept.notes[now.number] ?? "";
  area.addEventListener("change", () => {
    if (area.value) app.kept.notes[now.number] = area.value;
    else delete app.kept.notes[now.number];
    app.keep();
  });
  return h("p", {}, h("label", { for: "note" }, app.words.say("note")), area);
}
