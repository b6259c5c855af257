// A code that carries one person's ticks to another's phone: short enough for a QR code.
import type { Step } from "./data";

const HEAD = "BP1";

/** Everything that can be ticked, in the order of the work. */
export function tickIds(steps: readonly Step[]): string[] {
  return steps.flatMap((step) => [...step.turns.map((_, turn) => `t${step.number}.${turn}`), `c${step.number}`]);
}

function base64url(bytes: Uint8Array): string {
  const text = btoa(String.fromCharCode(...bytes));
  return text.replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "");
}

function bytesOf(text: string): Uint8Array | undefined {
  if (!/^[\w-]*$/.test(text) || text.length % 4 === 1) return undefined; // not base64url (RFC 4648)
  const plain = text.replaceAll("-", "+").replaceAll("_", "/");
  return Uint8Array.from(atob(plain), (letter) => letter.charCodeAt(0));
}

/** Adler-32 (RFC 1950), so that a code typed wrong is not taken. */
export function adler32(text: string): string {
  let a = 1;
  let b = 0;
  for (const letter of text) {
    a = (a + (letter.codePointAt(0) ?? 0)) % 65521;
    b = (b + a) % 65521;
  }
  return ((b * 65536 + a) >>> 0).toString(16).padStart(8, "0");
}

export function codeOf(design: string, ids: readonly string[], ticked: (id: string) => boolean): string {
  const bits = new Uint8Array(Math.ceil(ids.length / 8));
  ids.forEach((id, i) => {
    if (ticked(id)) bits[i >> 3] = (bits[i >> 3] ?? 0) | (1 << (i & 7));
  });
  const body = [HEAD, design.slice(0, 12), base64url(bits)].join(".");
  return `${body}.${adler32(body)}`;
}

export type Carried = { ids: string[] } | { wrong: "broken" | "other design" };

export function idsOf(code: string, design: string, ids: readonly string[]): Carried {
  const parts = code.trim().split(".");
  const [head, whose, bits, check] = parts;
  if (parts.length !== 4 || head !== HEAD || check !== adler32(parts.slice(0, 3).join("."))) return { wrong: "broken" };
  if (whose !== design.slice(0, 12)) return { wrong: "other design" };
  const bytes = bytesOf(bits ?? "");
  if (!bytes) return { wrong: "broken" };
  return { ids: ids.filter((_, i) => ((bytes[i >> 3] ?? 0) >> (i & 7)) & 1) };
}
