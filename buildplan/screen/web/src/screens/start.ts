// The cover: the finished piece, its figures, and the cautions, which come first.
import type { App } from "../app";
import { h } from "../dom";
import { frame } from "../frame";
import { personBeside } from "../stage";

export function start(app: App): HTMLElement {
  const { words, page } = app;
  const moment = page.piece.moments.length;
  app.stage.show({
    seat: page.beside,
    shown: { moment, isNew: () => false, picked: new Set(), near: null, inColour: true },
    tags: [],
    ways: [],
    person: personBeside(page, words),
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
  const facts = page.facts.map(([name, value]) => h("div", {}, h("dt", {}, words.of(name)), h("dd", {}, words.of(value))));
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
    frame(app),
    h(
      "div",
      { class: "told" },
      h("h1", {}, h("bdi", {}, words.of(page.piece.name))),
      h("dl", {}, ...facts),
      h("h2", {}, words.say("cautions first")),
      h("ul", { class: "cautions" }, ...cautions),
      begin,
      page.brand ? h("p", { dir: "auto" }, words.of(page.brand.contact)) : null,
    ),
  );
}
