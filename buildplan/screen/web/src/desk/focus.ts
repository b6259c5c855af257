// The focus is never lost: where what had it goes or can be pressed no more, what stands in its
// place has it.

const CAN_HAVE = 'a[href], button:not(:disabled), input:not(:disabled), select:not(:disabled), textarea:not(:disabled), [tabindex]:not([tabindex="-1"])';

/** What is around an element, from the nearest: each with its place among its like. */
type Around = readonly { readonly ground: Element; readonly at: number }[];

let last: HTMLElement | null = null;
let around: Around = [];

function aroundOf(element: Element): Around {
  const found: { ground: Element; at: number }[] = [];
  for (let at: Element = element; at.parentElement; at = at.parentElement) {
    found.push({ ground: at.parentElement, at: [...at.parentElement.children].indexOf(at) });
  }
  return found;
}

const isThere = (element: HTMLElement): boolean => element.isConnected && !element.matches(":disabled") && element.getClientRects().length > 0;

function firstIn(ground: Element | undefined): HTMLElement | null {
  if (!(ground instanceof HTMLElement)) return null;
  const all = [ground, ...ground.querySelectorAll<HTMLElement>(CAN_HAVE)];
  return all.find((one) => one.matches(CAN_HAVE) && isThere(one)) ?? null;
}

/** The nearest that can have the focus: what came in its place, else what is around it. */
function instead(): HTMLElement | null {
  for (const { ground, at } of around) {
    if (!ground.isConnected || ground.matches("main, #desk, body")) break;
    const { children } = ground;
    const found = firstIn(children[at]) ?? firstIn(children[at - 1]) ?? firstIn(children[at + 1]) ?? firstIn(ground);
    if (found) return found;
  }
  return document.querySelector<HTMLElement>("main h1") ?? document.querySelector<HTMLElement>("main");
}

function mend(): void {
  if (!last || isThere(last)) return;
  const now = document.activeElement;
  if (now !== null && now !== document.body && now !== last) return;
  const next = instead();
  if (!next) return; // nothing stands there yet
  if (!next.matches(CAN_HAVE)) next.tabIndex = -1;
  next.focus({ preventScroll: next.tabIndex < 0 });
}

/** Look after the focus for as long as the page is open. */
export function keepFocus(): void {
  addEventListener("focusin", (event) => {
    if (!(event.target instanceof HTMLElement)) return;
    last = event.target;
    around = aroundOf(last);
  });
  addEventListener("pointerdown", (event) => {
    if (event.target instanceof Element && !event.target.closest(CAN_HAVE)) last = null; // it is taken away
  });
  const seen = new MutationObserver(() => requestAnimationFrame(mend));
  seen.observe(document.body, { childList: true, subtree: true, attributeFilter: ["disabled"] });
}
