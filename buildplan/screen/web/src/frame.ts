// The picture on a screen, with what turns and labels it beside it.
import type { App } from "./app";
import { h } from "./dom";
import { sign } from "./icons";

const NEARER = 1.3;

/** The picture; `labels`, where the labels of all joints can be asked for, says whether they are. */
export function frame(app: App, labels?: { shown: boolean; turn: () => boolean }): HTMLElement {
  const { words, stage } = app;
  const back = h("button", { type: "button", class: "seat", hidden: true, onclick: () => stage.toTheSeat() }, words.say("to the seat"));
  stage.onTurned = (away) => (back.hidden = !away);
  const tool = (shown: string | SVGElement, name: string, then: () => void) =>
    h("button", { type: "button", "aria-label": words.say(name), title: words.say(name), onclick: then }, shown);
  const named = labels && tool(sign("labels"), "all labels", () => named?.setAttribute("aria-pressed", String(labels.turn())));
  named?.setAttribute("aria-pressed", String(labels?.shown));
  const tools = h("div", { class: "tools" }, named, tool("+", "nearer", () => stage.turn(0, 0, NEARER)), tool("−", "farther", () => stage.turn(0, 0, 1 / NEARER)));
  return h("div", { class: "picture" }, stage.element, tools, back);
}
