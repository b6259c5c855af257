// Ticks, place, notes and minutes, kept on the device for this very design.

export interface Kept {
  place: number;
  read: boolean; // whether the cautions were read
  ticks: Record<string, [boolean, number]>; // with when it was last changed
  notes: Record<string, string>;
  minutes: Record<string, number>;
}

export type Store = Pick<Storage, "getItem" | "setItem" | "removeItem" | "key" | "length">;

const PREFIX = "buildplan:piece:";

export const nothing = (): Kept => ({ place: 1, read: false, ticks: {}, notes: {}, minutes: {} });

/** What was kept, or nothing where it is none of ours. */
export function parsed(text: string | null): Kept {
  const kept = nothing();
  let told: unknown;
  try {
    told = JSON.parse(text ?? "null");
  } catch {
    return kept;
  }
  if (typeof told !== "object" || told === null) return kept;
  const found = told as Partial<Kept>;
  if (Number.isInteger(found.place)) kept.place = found.place ?? 1;
  kept.read = found.read === true;
  for (const [id, value] of Object.entries(found.ticks ?? {})) {
    if (Array.isArray(value) && typeof value[1] === "number") kept.ticks[id] = [value[0] === true, value[1]];
  }
  for (const [id, note] of Object.entries(found.notes ?? {})) {
    if (typeof note === "string") kept.notes[id] = note;
  }
  for (const [id, minutes] of Object.entries(found.minutes ?? {})) {
    if (typeof minutes === "number" && minutes > 0 && Number.isFinite(minutes)) kept.minutes[id] = minutes;
  }
  return kept;
}

/** The name of the design that something was kept for. */
function nameIn(text: string | null): unknown {
  try {
    return (JSON.parse(text ?? "null") as { name?: unknown } | null)?.name;
  } catch {
    return undefined;
  }
}

/** Both together: of a tick its last change, of notes and minutes one's own first. */
export function merged(own: Kept, other: Kept): Kept {
  const ticks = { ...own.ticks };
  for (const [id, value] of Object.entries(other.ticks)) {
    const mine = ticks[id];
    if (!mine || value[1] > mine[1]) ticks[id] = value;
  }
  return {
    place: own.place,
    read: own.read || other.read,
    ticks,
    notes: { ...other.notes, ...own.notes },
    minutes: { ...other.minutes, ...own.minutes },
  };
}

export class Keeper {
  private last = "";
  constructor(
    private readonly store: Store | null,
    private readonly design: string,
    private readonly name: string,
    private readonly refused: () => void,
  ) {}

  get key(): string {
    return `${PREFIX}${this.design}`;
  }

  read(): Kept {
    try {
      return parsed(this.store?.getItem(this.key) ?? null);
    } catch {
      this.refused();
      return nothing();
    }
  }

  /** Keep it; what another window has kept meanwhile is not lost. */
  write(kept: Kept): Kept {
    try {
      if (!this.store) throw new Error("no storage");
      const there = this.store.getItem(this.key);
      const whole = there !== null && there !== this.last ? merged(kept, parsed(there)) : kept;
      const text = JSON.stringify({ ...whole, name: this.name });
      this.store.setItem(this.key, text);
      this.last = text;
      return whole;
    } catch {
      this.refused();
      return kept;
    }
  }

  /** Whether an earlier form of the design, of the same name, has ticks here. */
  others(): string[] {
    try {
      const keys = Array.from({ length: this.store?.length ?? 0 }, (_, i) => this.store?.key(i) ?? "");
      return keys.filter((key) => key.startsWith(PREFIX) && key !== this.key && nameIn(this.store?.getItem(key) ?? null) === this.name);
    } catch {
      return [];
    }
  }

  clear(): void {
    try {
      this.store?.removeItem(this.key);
      this.last = "";
    } catch {
      this.refused();
    }
  }
}
