// Where the reader is, as the end of the page's address says it: #home, #new, #star/piece.

export const TABS = ["piece", "file", "print"] as const;
export type Tab = (typeof TABS)[number];
export type Place = { screen: "home" } | { screen: "new" } | { screen: "design"; name: string; tab: Tab };

const OF_A_DESIGN = new RegExp(`^#([^/]+)/(${TABS.join("|")})$`);

/** The address of a place. No design's can be taken for home's: it has a tab. */
export function hashOf(place: Place): string {
  return place.screen === "design" ? `#${encodeURIComponent(place.name)}/${place.tab}` : `#${place.screen}`;
}

/** The place that an address names; home where it names none. */
export function placeOf(hash: string): Place {
  if (hash === "#new") return { screen: "new" };
  const found = OF_A_DESIGN.exec(hash);
  if (!found) return { screen: "home" };
  try {
    return { screen: "design", name: decodeURIComponent(found[1] ?? ""), tab: found[2] as Tab };
  } catch {
    return { screen: "home" }; // no address of ours: a sign of it is broken
  }
}
