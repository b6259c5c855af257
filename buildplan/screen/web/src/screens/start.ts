// The cover: the finished piece, its figures, and the cautions, which come first.
import type { App } from "../app";
import type { Page, Seat } from "../data";
import { h } from "../dom";

/** The seat before the finished piece, from which the person beside it is seen too. */
function withPerson(page: Page): Seat {
  const { whole } = page;
  const right = Math.max(...page.person.map((part) => part.from[0] + part.radius_m));
  const beyond = Math.max(0, right + 0.1 - (whole.about[0] + whole.across_m / 2));
  return { ...whole, about: [whole.about[0] + beyond / 2, whole.about[1], whole.about[2]], across_m: whole.across_m + beyond };
}

export function start(app: App): HTMLElement {
  const { words, page } = app;
  const moment = page.piece.moments.length;
  app.stage.show({
    seat: withPerson(page),
    shown: { moment, isNew: () => false, picked: new Set(), near: null, inColour: true },
    tags: [],
    ways: [],
    person: true,
    alt: words.say("finished picture", { piece: words.of(page.piece.name) }),
  });
  const cautions = page.cautions.map((one) =>
    h(
      "li",
      { class: "caution" },
      h("strong", {}, words.of(one.signal)),
      one.topic ? h("b", {}, ` ${words.of(one.topic)} `) : null,
      h("span", {}, words.of(one.words)),
    ),
  );
  const facts = page.facts.flatMap(([name, value]) => [h("dt", {}, words.of(name)), h("dd", {}, words.of(value))]);
  const begin = h(
    "button",
    {
      type: "button",
      class: "large",
      onclick: () => {
        app.kept.read = true;
        app.keep();
        app.go("step");
      },
    },
    words.say(app.kept.read ? "on with it" : "have read"),
  );
  return h(
    "div",
    { class: "columns" },
    h("div", { class: "picture" }, app.stage.element),
    h(
      "div",
      { class: "told" },
      h("h1", {}, words.of(page.piece.name)),
      h("h2", {}, words.say("cautions first")),
      h("ul", { class: "cautions" }, ...cautions),
      begin,
      h("dl", {}, ...facts),
      page.brand ? h("p", {}, words.of(page.brand.contact)) : null,
    ),
  );
}
