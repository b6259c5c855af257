// The whole build as a film: played at any speed, or drawn along by hand.
import type { App } from "../app";
import { h } from "../dom";
import { frame } from "../frame";

let at = 0;
let speed = 4; // moments a second
const SPEEDS = [1, 2, 4, 8, 16];

export function film(app: App): HTMLElement {
  const { words, page } = app;
  const coming = new Set(app.bodies.map((body) => body.moment));
  const moments = page.piece.moments.map((_, moment) => moment).filter((moment) => coming.has(moment));
  at = Math.min(at, moments.length - 1);
  const still = matchMedia("(prefers-reduced-motion: reduce)").matches;
  const where = h("p", { class: "where" });
  const slider = h("input", { type: "range", min: 0, max: Math.max(moments.length - 1, 0), step: 1, value: at, "aria-label": words.say("film place") });
  const play = h("button", { type: "button", class: "large" }, words.say("play"));
  let timer = 0;

  const show = (keep = true) => {
    const moment = moments[at] ?? 0;
    const [number, turn] = page.piece.moments[moment] ?? [1, 0];
    const step = page.piece.steps[number - 1];
    const name = step ? words.of(step.turns[turn]?.name ?? {}) || words.of(step.title) : "";
    where.textContent = words.say("film at", { number, count: page.piece.steps.length, name });
    slider.value = String(at);
    slider.setAttribute("aria-valuetext", where.textContent);
    app.stage.show(
      {
        seat: { ...page.whole, lying: step?.turns[turn]?.seat.lying ?? false },
        shown: { moment, isNew: (body) => body.moment === moment, picked: new Set(), near: null, inColour: true },
        tags: [],
        ways: [],
        person: null,
        alt: where.textContent,
      },
      keep,
    );
  };
  const stop = () => {
    window.clearInterval(timer);
    timer = 0;
    play.textContent = words.say("play");
  };
  const run = () => {
    if (at >= moments.length - 1) at = 0;
    play.textContent = words.say("pause");
    timer = window.setInterval(() => {
      at += 1;
      show();
      if (at >= moments.length - 1) stop();
    }, 1000 / speed);
  };
  play.addEventListener("click", () => (timer ? stop() : run()));
  slider.addEventListener("input", () => {
    at = Number(slider.value);
    show();
  });
  const fast = h(
    "select",
    { id: "speed" },
    ...SPEEDS.map((each) => h("option", { value: each, selected: each === speed }, words.say("speed", { speed: each }))),
  );
  fast.addEventListener("change", () => {
    speed = Number(fast.value);
    if (timer) {
      stop();
      run();
    }
  });
  const aside = (by: number) => () => {
    at = Math.max(0, Math.min(moments.length - 1, at + by));
    show();
  };
  app.leave = stop;
  const title = h("h1", {}, words.say("screen film"));
  app.focus(title);
  show(false);
  return h(
    "div",
    { class: "columns" },
    frame(app),
    h(
      "div",
      { class: "told" },
      title,
      where,
      slider,
      h(
        "div",
        { class: "tools" },
        play,
        h("button", { type: "button", onclick: aside(-1) }, words.say("one back")),
        h("button", { type: "button", onclick: aside(1) }, words.say("one on")),
        h("label", { for: "speed" }, words.say("how fast")),
        fast,
      ),
      still ? h("p", {}, words.say("still")) : null,
      h("button", { type: "button", onclick: () => app.follow({ screen: "step", what: String(page.piece.moments[moments[at] ?? 0]?.[0] ?? 1) }) }, words.say("to this step")),
    ),
  );
}
