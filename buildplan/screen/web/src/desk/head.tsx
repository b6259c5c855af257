// The head of the page: home, the open design and its tabs, undo and redo, whether it is saved.
import { useEffect } from "preact/hooks";
import { loadHome, redo, tellError, undo } from "./actions";
import { hashOf, TABS, type Tab } from "./route";
import { Sign } from "./sign";
import { connected, design, place, saving } from "./state";
import { say, speak, words } from "./words";

export function Head() {
  const now = place.value;
  const open = now.screen === "design" && design.value?.name === now.name ? design.value : null;
  useEffect(() => {
    document.title = open ? open.title || open.name : say("desk");
  }, [open?.title, words.value]);
  return (
    <header class={now.screen === "design" ? "of-a-design" : ""}>
      {now.screen === "home" ? (
        <span class="own">{say("desk")}</span>
      ) : (
        <a class="home" href="#home">
          <Sign name="home" />
          <span>{say("home")}</span>
        </a>
      )}
      {now.screen === "design" && (
        <>
          <span class="title" dir="auto">{open?.title || now.name}</span>
          <Tabs name={now.name} tab={now.tab} />
          {open && <Steps back={open.can_undo} on={open.can_redo} fixed={open.read_only} />}
        </>
      )}
      {now.screen === "home" && <Languages />}
    </header>
  );
}

function Tabs({ name, tab }: { name: string; tab: Tab }) {
  return (
    <nav aria-label={say("tabs")}>
      {TABS.map((one) => (
        <a key={one} href={hashOf({ screen: "design", name, tab: one })} aria-current={one === tab ? "page" : undefined}>
          <Sign name={one} />
          <span>{say(`tab ${one}`)}</span>
        </a>
      ))}
    </nav>
  );
}

function Steps({ back, on, fixed }: { back: boolean; on: boolean; fixed: boolean }) {
  useEffect(() => {
    addEventListener("keydown", stepByKey);
    return () => removeEventListener("keydown", stepByKey);
  }, []);
  return (
    <div class="steps">
      <span class="saving" data-state={fixed ? "fixed" : saving.value}>
        {fixed ? say("read only short") : connected.value ? say(saving.value) : say("no connection")}
      </span>
      <button type="button" aria-label={say("undo")} title={say("undo")} aria-keyshortcuts="Control+Z" disabled={!back || fixed} onClick={() => void undo()}>
        <Sign name="undo" />
      </button>
      <button type="button" aria-label={say("redo")} title={say("redo")} aria-keyshortcuts="Control+Shift+Z" disabled={!on || fixed} onClick={() => void redo()}>
        <Sign name="redo" />
      </button>
    </div>
  );
}

/** Where something is being written, undoing is that field's own. */
function isWritten(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.closest("input:not([type=range]):not([type=checkbox]):not([type=radio]):not([type=color]), textarea, .editor") !== null;
}

function stepByKey(event: KeyboardEvent): void {
  if (!(event.ctrlKey || event.metaKey) || event.altKey || isWritten(event.target)) return;
  const key = event.key.toLowerCase();
  if (key !== "z" && key !== "y") return;
  event.preventDefault();
  const found = design.value;
  if (!found || found.read_only) return;
  if (key === "y" || event.shiftKey) {
    if (found.can_redo) void redo();
  } else if (found.can_undo) void undo();
}

function Languages() {
  const { language, languages } = words.value;
  if (Object.keys(languages).length < 2) return null;
  return (
    <label class="language">
      <span class="hidden">{say("language")}</span>
      <select value={language} onChange={(event) => void speak(event.currentTarget.value).then(loadHome, tellError)}>
        {Object.entries(languages).map(([key, name]) => (
          <option key={key} value={key} lang={key}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}
