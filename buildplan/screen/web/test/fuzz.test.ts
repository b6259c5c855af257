// Ticks made wrong, by their structure and by their letters, the same ones each time: a code that is
// carried from another phone, and what a browser has kept. Whatever it is, it is read or refused.
import { describe, expect, it } from "vitest";
import { adler32, codeOf, idsOf } from "../src/carry";
import { merged, nothing, parsed } from "../src/keep";

const CASES = 2000;
const DESIGN = "abcdef0123456789";
const IDS = Array.from({ length: 37 }, (_, i) => `t${i}.0`);
const ATOMS = [0, -1, 1e300, 2 ** 53, null, true, "", "x", "\u202e", "__proto__", "constructor", [], {}, [true, 1], [[]]];
const SIGNS = ["", ".", "..", "=", "-", "_", "%", "\0", "\u{1f388}", "é", "A".repeat(3000), "BP1.", '"', "{", "]", ",", "9"];

/** Numbers below a bound, the same each time (linear congruential, by the constants of Numerical Recipes, from memory). */
function numbers(seed: number): (below: number) => number {
  let state = seed >>> 0;
  return (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

function cut(text: string, next: (below: number) => number): string {
  for (let change = next(3); change >= 0; change--) {
    const at = next(text.length + 1);
    text = text.slice(0, at) + (SIGNS[next(SIGNS.length)] ?? "") + text.slice(at + next(4));
  }
  return text;
}

function changed(value: unknown, next: (below: number) => number): unknown {
  if (next(4) === 0 || typeof value !== "object" || value === null) return ATOMS[next(ATOMS.length)];
  const entries = Object.entries(value);
  const [key] = entries[next(Math.max(1, entries.length))] ?? ["ticks"];
  if (next(5) === 0) return Object.fromEntries(entries.map(([name, one]) => [name === key ? String(ATOMS[next(ATOMS.length)]) : name, one]));
  const inner = changed((value as Record<string, unknown>)[key], next);
  return Array.isArray(value) ? value.map((one: unknown, i) => (String(i) === key ? inner : one)) : { ...value, [key]: inner };
}

describe("ticks made wrong", () => {
  const code = codeOf(DESIGN, IDS, (id) => id.length % 2 === 0);
  it("as a code give ticks of this design or are refused", () => {
    for (let seed = 0; seed < CASES; seed++) {
      const next = numbers(seed);
      const body = cut(code.split(".").slice(0, 3).join("."), next);
      const wrong = next(2) ? `${body}.${adler32(body)}` : cut(code, next);
      const found = idsOf(wrong, DESIGN, IDS);
      if ("ids" in found) expect(found.ids.every((id) => IDS.includes(id))).toBe(true);
      else expect(["broken", "other design"]).toContain(found.wrong);
    }
  });
  it("as a browser has kept them give what can be shown", () => {
    const kept = { place: 3, read: true, ticks: { "t1.0": [true, 5], c2: [false, 9] }, notes: { 2: "a" }, minutes: { 2: 4.5 } };
    for (let seed = 0; seed < CASES; seed++) {
      const next = numbers(seed);
      const text = next(3) ? JSON.stringify(changed(kept, next)) : cut(JSON.stringify(kept), next);
      const found = merged(parsed(text), merged(nothing(), parsed(text)));
      expect(Number.isInteger(found.place)).toBe(true);
      for (const [on, at] of Object.values(found.ticks)) expect([typeof on, typeof at]).toEqual(["boolean", "number"]);
      for (const note of Object.values(found.notes)) expect(typeof note).toBe("string");
      for (const minutes of Object.values(found.minutes)) expect(minutes > 0 && Number.isFinite(minutes)).toBe(true);
    }
  });
});
