// Language, looks, handing over ticks, the log, and what goes with the page.
import type { App } from "../app";
import { codeOf, idsOf } from "../carry";
import { codePicture } from "../code";
import { h, save } from "../dom";
import { logOf, notesOf } from "../log";
import { canScan, scan } from "../scan";
import { copyWords } from "../surround";

// Spreadsheets tell UTF-8 by it.
const BYTE_ORDER_MARK = "\ufeff";

export function more(app: App): HTMLElement {
  const { words } = app;
  const title = h("h1", {}, words.say("screen more"));
  app.focus(title);
  const part = (name: string, ...inside: (Node | null)[]) => h("section", {}, h("h2", {}, words.say(name)), ...inside);
  return h(
    "div",
    { class: "told alone" },
    title,
    part("reading", reading(app)),
    part("hand over", handOver(app)),
    part("log", log(app)),
    part("about", ...about(app)),
  );
}

function about(app: App): (Node | null)[] {
  const { words, page } = app;
  const copy = copyWords(app);
  return [
    copy ? h("p", {}, copy) : null,
    page.brand ? h("p", {}, h("bdi", {}, page.brand.name), ". ", h("bdi", {}, words.of(page.brand.contact))) : null,
    page.brand ? h("p", { dir: "auto" }, words.of(page.brand.licence)) : null,
    h("button", { type: "button", onclick: () => app.go("start") }, words.say("cautions")),
    h("button", { type: "button", onclick: () => window.print() }, words.say("print")),
    h("details", {}, h("summary", {}, words.say("licences")), h("pre", {}, page.licences)),
  ];
}

function reading(app: App): HTMLElement {
  const { words, page } = app;
  const choose = (what: "language" | "theme" | "type", values: readonly (readonly [string, string])[], now: string) => {
    const made = h("select", { id: what }, ...values.map(([value, text]) => h("option", { value, selected: value === now }, text)));
    made.addEventListener("change", () => {
      app.leave?.();
      app.look(what, made.value);
      app.draw();
      document.getElementById(what)?.focus();
    });
    return h("p", {}, h("label", { for: what }, words.say(what)), made);
  };
  const told = (values: readonly string[], of: string) => values.map((value) => [value, words.say(`${of} ${value}`)] as const);
  return h(
    "div",
    { class: "choices" },
    choose("language", page.piece.languages.map((each) => [each, page.names[each] ?? each] as const), words.language),
    choose("theme", told(["auto", "light", "dark"], "theme"), app.wants("theme")),
    choose("type", told(["normal", "large", "largest"], "type"), app.wants("type")),
  );
}

function handOver(app: App): HTMLElement {
  const { words, page } = app;
  const code = codeOf(page.piece.design, app.tickIds, (id) => app.ticked(id));
  const name = `ticks-${page.piece.design.slice(0, 8)}.txt`;
  return h(
    "div",
    {},
    h("p", {}, words.say("hand over how")),
    codePicture(code, words.say("qr picture")),
    h("code", { class: "code" }, code),
    h("button", { type: "button", onclick: () => save(name, "text/plain", code) }, words.say("save code")),
    ...takeOver(app),
  );
}

/** Where another phone's code is taken in: by the camera, as text, from a file. */
function takeOver(app: App): HTMLElement[] {
  const { words, page } = app;
  const said = h("p", { role: "status" });
  const taken = (text: string): boolean => {
    const found = idsOf(text, page.piece.design, app.tickIds);
    if ("wrong" in found) {
      said.textContent = words.say(`code ${found.wrong}`);
      return false;
    }
    const fresh = found.ids.filter((id) => !app.ticked(id));
    app.tick(fresh, true);
    said.textContent = words.say("taken", { count: fresh.length });
    return true;
  };
  const field = h("textarea", { id: "code", dir: "ltr", rows: 3, spellcheck: "false", autocomplete: "off" });
  const take = h("button", { type: "button", onclick: () => taken(field.value) }, words.say("take over"));
  const file = h("input", { type: "file", id: "code-file", accept: ".txt,text/plain" });
  file.addEventListener("change", () => {
    void file.files?.[0]?.text().then((text) => {
      field.value = text.trim();
      taken(text);
    });
  });
  return [
    h("h3", {}, words.say("take in")),
    ...(canScan() ? [camera(app, taken, said)] : []),
    h("p", {}, h("label", { for: "code" }, words.say("paste code")), field),
    take,
    h("p", {}, h("label", { for: "code-file" }, words.say("open code")), file),
    said,
  ];
}

/** A button that reads the other phone's code with the camera. */
function camera(app: App, taken: (text: string) => boolean, said: HTMLElement): HTMLElement {
  const { words } = app;
  const video = h("video", { class: "camera", playsinline: true, muted: true, hidden: true, "aria-label": words.say("scanning") });
  const button = h("button", { type: "button", class: "scan" }, words.say("scan"));
  let stop: (() => void) | null = null;
  const end = () => {
    stop?.();
    stop = null;
    video.hidden = true;
    button.textContent = words.say("scan");
  };
  app.leave = end;
  button.addEventListener("click", () => {
    if (stop) {
      end();
      return;
    }
    video.hidden = false;
    said.textContent = words.say("scanning");
    button.textContent = words.say("scan stop");
    scan(video, (text) => stop && taken(text) && end()).then(
      (stopper) => {
        if (video.isConnected) stop = stopper;
        else stopper();
      },
      () => {
        end();
        said.textContent = words.say("no camera");
      },
    );
  });
  return h("div", {}, button, video);
}

function log(app: App): HTMLElement {
  const { words, page } = app;
  const { steps } = page.piece;
  const name = page.piece.design.slice(0, 8);
  const clear = h("button", { type: "button", class: "danger" }, words.say("clear"));
  let sure = false;
  clear.addEventListener("click", () => {
    if (!sure) {
      sure = true;
      clear.textContent = words.say("clear sure");
      return;
    }
    app.clear();
    app.draw();
    app.say(words.say("cleared"));
  });
  return h(
    "div",
    {},
    h("p", {}, words.say("log how")),
    h("button", { type: "button", class: "log", onclick: () => save(`log-${name}.csv`, "text/csv", BYTE_ORDER_MARK + logOf(steps, app.kept.minutes, app.kept.notes)) }, words.say("save log")),
    h("button", { type: "button", onclick: () => save(`notes-${name}.txt`, "text/plain", notesOf(steps, app.kept.notes, (step) => words.of(step.title))) }, words.say("save notes")),
    clear,
  );
}
