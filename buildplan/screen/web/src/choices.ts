// How the reader wants the page: its language, light or dark, the size of type. Kept on the device.

export type Choice = "language" | "theme" | "type";

const keyOf = (what: Choice) => `buildplan:${what}`;

export function store(): Storage | null {
  try {
    return window.localStorage;
  } catch {
    return null; // the browser forbids it
  }
}

export function chosen(what: Choice): string | null {
  try {
    return store()?.getItem(keyOf(what)) ?? null;
  } catch {
    return null;
  }
}

/** Whether it could be kept. */
export function choose(what: Choice, value: string): boolean {
  try {
    const place = store();
    place?.setItem(keyOf(what), value);
    return place !== null;
  } catch {
    return false;
  }
}
