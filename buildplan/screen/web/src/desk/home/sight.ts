// Which cards are in sight: what they still lack is worked out before all else.
import { useEffect } from "preact/hooks";
import { tellError } from "../actions";
import { tellSeen } from "../api";

const SOON_MS = 100;

/** Tell the desk, whenever others come into sight, which of the cards that lack something do. */
export function useSight(lacking: readonly string[]): void {
  useEffect(() => {
    if (lacking.length === 0) return;
    const inSight = new Set<string>();
    let soon: ReturnType<typeof setTimeout> | undefined;
    const tell = (): void => {
      soon = undefined;
      const names = lacking.filter((name) => inSight.has(name));
      if (names.length > 0) tellSeen(names).catch(tellError);
    };
    const observer = new IntersectionObserver((entries) => {
      for (const one of entries) {
        const name = (one.target as HTMLElement).dataset["name"] ?? "";
        if (one.isIntersecting) inSight.add(name);
        else inSight.delete(name);
      }
      soon ??= setTimeout(tell, SOON_MS);
    });
    for (const card of document.querySelectorAll<HTMLElement>("li.card[data-name]")) {
      if (lacking.includes(card.dataset["name"] ?? "")) observer.observe(card);
    }
    return () => {
      observer.disconnect();
      clearTimeout(soon);
    };
  }, [lacking.join("/")]);
}
