// What the server says by itself: something changed, was worked out, was printed.
import { changedElsewhere, loadHome, loadWorked, openDesign } from "./actions";
import type { Happened } from "./contract";
import { connected, design, drawn, jobs, notice } from "./state";
import { say } from "./words";

let lost = false;
const TOGETHER_MS = 250;
let again: ReturnType<typeof setTimeout> | undefined;

/** Many cards may change at once: home is asked for once for all of a moment, and in each. */
function homeSoon(): void {
  again ??= setTimeout(() => {
    again = undefined;
    void loadHome();
  }, TOGETHER_MS);
}

export function hear(happened: Happened): void {
  switch (happened.kind) {
    case "changed":
      void changedElsewhere(happened.name, happened.version, happened.by);
      homeSoon();
      break;
    case "worked":
      if (design.value?.name === happened.name && design.value.version === happened.version) void loadWorked(happened.name, happened.version);
      break;
    case "job":
      jobs.value = { ...jobs.value, [happened.job]: happened };
      break;
    case "beginnings":
      drawn.value += 1;
      break;
    case "card":
    case "folder":
      homeSoon();
      break;
  }
}

/** Listen for as long as the page is open; a browser asks again by itself when the line is cut. */
export function listen(): void {
  const line = new EventSource("/api/events");
  line.onmessage = (event: MessageEvent<string>) => hear(JSON.parse(event.data) as Happened);
  line.onerror = () => {
    lost = true;
    connected.value = false;
    if (line.readyState === EventSource.CLOSED) setTimeout(listen, 2000);
  };
  line.onopen = () => {
    connected.value = true;
    if (!lost) return;
    lost = false;
    notice(say("connected again"));
    void loadHome();
    if (design.value) void openDesign(design.value.name);
  };
}
