// The balloons of the file, as its controls tell them.
import type { Control, Design } from "../contract";
import { say } from "../words";

export interface OwnBalloon {
  key: string;
  label: string;
  told: string; // its label, its size where others are called so too, its key where those are alike
  gauge: string; // the same by what it is sized to
  hex: string;
  isLink: boolean;
  control: Control;
}

/** The control at a place of the tree, by its path. */
export function controlAt(controls: readonly Control[], wanted: readonly (string | number)[]): Control | undefined {
  for (const control of controls) {
    if (control.path.length === wanted.length && control.path.every((step, i) => step === wanted[i])) return control;
    const found = controlAt(control.items ?? [], wanted);
    if (found) return found;
  }
  return undefined;
}

export function ownBalloons(design: Design | null): OwnBalloon[] {
  const all = controlAt(design?.controls ?? [], ["balloons"]);
  const found = (all?.items ?? []).map((control): OwnBalloon => {
    const of = (key: string): Control | undefined => control.items?.find((item) => item.key === key);
    const label = of("label")?.text || control.key;
    const size = of("nominal");
    const gauge = of("inflate_to");
    return {
      key: control.key,
      label,
      told: `${label}, ${size?.text ?? ""} ${size?.unit ?? ""}`.trim(),
      gauge: say("piece sized to", { label, gauge: `${gauge?.text ?? ""} ${gauge?.unit ?? ""}`.trim() }),
      hex: of("colour")?.hex ?? "#888888",
      isLink: of("kind")?.value === "link",
      control,
    };
  });
  const alike = (one: OwnBalloon, by: "label" | "told"): boolean => found.filter((other) => other[by] === one[by]).length > 1;
  return found.map((one) => ({ ...one, told: !alike(one, "label") ? one.label : alike(one, "told") ? one.gauge : one.told })).map((one, _, named) => (named.some((other) => other.told === one.told && other.key !== one.key) ? { ...one, told: `${one.label} (${one.key})` } : one));
}

/** A key for one more balloon: made from a word, and of no other. */
export function freeKey(word: string, taken: readonly string[]): string {
  const plain = word.normalize("NFD").replace(/[^\w ]/g, "").trim().toLowerCase().replace(/\W+/g, "_") || "balloon";
  const start = /^[a-z]/.test(plain) ? plain : `b_${plain}`;
  for (let n = 1; ; n += 1) {
    const key = n === 1 ? start : `${start}_${n}`;
    if (!taken.includes(key)) return key;
  }
}
