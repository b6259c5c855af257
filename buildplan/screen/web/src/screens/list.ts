// Every step by stage, with how far each stage has come.
import type { App } from "../app";
import type { Step } from "../data";
import { h } from "../dom";
import { sign } from "../icons";

export function list(app: App): HTMLElement {
  const { words, page } = app;
  const parts: { stage: string; steps: Step[] }[] = [];
  for (const step of page.piece.steps) {
    const last = parts.at(-1);
    if (last?.stage === step.stage) last.steps.push(step);
    else parts.push({ stage: step.stage, steps: [step] });
  }
  const title = h("h1", {}, words.say("screen list"));
  const made = h("div", { class: "told alone" }, title, ...parts.map((part) => partOf(app, part.stage, part.steps)));
  const asked = [...made.querySelectorAll("section")].find((part) => part.dataset["stage"] === app.at.what);
  app.focus(asked?.querySelector("h2") ?? title, asked !== undefined);
  return made;
}

function partOf(app: App, stage: string, steps: Step[]): HTMLElement {
  const { words, page } = app;
  const done = steps.filter((step) => app.done(step)).length;
  const name = words.of(page.piece.stages[stage] ?? {});
  const bar = h("progress", { max: steps.length, value: done, "aria-label": name });
  const line = (step: Step) =>
    h(
      "li",
      {},
      h(
        "button",
        { type: "button", class: "line", "aria-current": step.number === app.kept.place ? "step" : undefined, onclick: () => app.go("step", step.number) },
        h("span", { class: "number" }, String(step.number)),
        h("span", {}, words.of(step.title)),
        app.done(step) ? h("span", { class: "done" }, sign("done"), words.say("done")) : null,
      ),
    );
  return h("section", { "data-stage": stage }, h("h2", {}, name, h("small", {}, words.say("done of", { done, count: steps.length }))), bar, h("ol", { class: "steps" }, ...steps.map(line)));
}
