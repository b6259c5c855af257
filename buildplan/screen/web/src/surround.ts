// What stands round every screen: the head, the way back, the other screens, whose copy it is.
import type { App } from "./app";
import { h } from "./dom";
import { sign } from "./icons";
import { SCREENS, type Place } from "./route";

/** `skip` puts the keyboard at the main part; the address of the page says where the reader is. */
export function headOf(app: App, skip: () => void): HTMLElement[] {
  const { words, page } = app;
  const brand = page.brand ? h("span", { class: "brand" }, h("bdi", {}, page.brand.name)) : null;
  const past = h("a", { class: "skip", href: "#main" }, words.say("skip"));
  past.addEventListener("click", (event) => {
    event.preventDefault();
    skip();
  });
  return [
    past,
    h("span", { class: "piece" }, brand, h("span", { class: "name" }, h("bdi", {}, words.of(page.piece.name)))),
    h("button", { type: "button", class: "cautions", onclick: () => app.go("start") }, sign("caution"), words.say("cautions")),
    h("div", { class: "progress", "aria-hidden": "true" }, h("i", {})),
  ];
}

export function navOf(app: App): HTMLElement[] {
  const { words } = app;
  return SCREENS.map((screen) =>
    h(
      "button",
      {
        type: "button",
        "data-screen": screen,
        "aria-current": app.at.screen === screen ? "page" : undefined,
        onclick: () => app.go(screen),
      },
      sign(screen),
      h("span", {}, words.say(`nav ${screen}`)),
    ),
  );
}

export function wayBack(app: App, from: Place, then: () => void): HTMLElement {
  const { words } = app;
  const name =
    from.screen === "step"
      ? words.say("back to step", { number: from.what })
      : words.say("back to screen", { screen: words.say(`nav ${from.screen}`) });
  return h("button", { type: "button", class: "way-back", onclick: then }, sign("back"), name);
}

/** The serial of a sold copy, and for whom it was made. */
export function copyWords(app: App): string {
  const { words, page } = app;
  if (!page.copy) return "";
  const { serial, buyer } = page.copy;
  const told = words.say("serial", { serial });
  return buyer ? `${told} · ${words.say("buyer", { buyer })}` : told;
}
