// Where the reader is, as the end of the page's address says it: #step-12, #find-A7.
// The codes of the printed booklet lead to steps in the same way.

export const SCREENS = ["step", "list", "find", "film", "burst", "more"] as const;
export type Screen = (typeof SCREENS)[number] | "start";

export interface Place {
  screen: Screen;
  what: string; // number of a step, label of a joint, name of a stage, a balloon that burst
}

const WRITTEN = new RegExp(`^#(${SCREENS.join("|")})(?:-(.*))?$`);

/** The address of a place; the start has none of its own. */
export function hashOf(place: Place): string {
  if (place.screen === "start") return "";
  return `#${place.screen}${place.what ? `-${encodeURIComponent(place.what)}` : ""}`;
}

/** The place that an address names, or nothing. */
export function placeOf(hash: string): Place | undefined {
  const found = WRITTEN.exec(hash);
  if (!found) return undefined;
  try {
    return { screen: found[1] as Screen, what: decodeURIComponent(found[2] ?? "") };
  } catch {
    return undefined; // no address of ours: a sign of it is broken
  }
}
