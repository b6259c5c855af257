// What is printed: the cautions, then every step's words with boxes to tick.
import type { App } from "./app";
import { h } from "./dom";

export function onPaper(app: App): HTMLElement[] {
  const { words, page } = app;
  const cautions = page.cautions.map((one) =>
    h("p", {}, h("strong", {}, `${words.of(one.signal)} ${words.of(one.topic)}`.trim()), ` ${words.of(one.words)}`),
  );
  const facts = page.facts.map(([name, value]) => h("p", {}, `${words.of(name)}: ${words.of(value)}`));
  const row = (text: string) => h("p", { class: "row" }, h("span", { class: "box" }), h("span", {}, text));
  const steps = page.piece.steps.map((step) =>
    h(
      "section",
      {},
      h("h2", {}, `${step.number}. ${words.of(step.title)}`),
      h("p", {}, words.of(step.text)),
      ...step.turns.map((turn) => words.of(turn.row)).filter(Boolean).map(row),
      row(`${words.say("check")} ${words.of(step.check)}`),
    ),
  );
  const draft = page.piece.draft ? h("p", { class: "row" }, h("strong", {}, words.say("draft"))) : null;
  return [h("h1", {}, h("bdi", {}, words.of(page.piece.name))), draft, ...facts, ...cautions, ...steps].filter((each) => each !== null);
}
