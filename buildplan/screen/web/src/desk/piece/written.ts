// What is typed into a control, as it goes into the file: never lost, right or wrong.
import type { Control, Edit, Problem } from "../contract";
import { isUnder, samePath } from "./paths";

/** A number where one was typed; else the text as it is, which the server will judge. */
export function valueTyped(control: Control, text: string): unknown {
  const plain = text.trim();
  const isNumber = control.kind === "number" || control.kind === "whole" || control.kind === "size";
  if (isNumber && /^[+-]?\d+([.,]\d+)?$/.test(plain)) return Number(plain.replace(",", "."));
  if (control.kind === "joints") return jointsTyped(control, plain);
  return isNumber ? plain : text;
}

const LABELS = /^[A-Za-z0-9.]*\d$/;

/** Joints with commas between, or only spaces; one of them stands alone where it may. */
function jointsTyped(control: Control, text: string): unknown {
  const spaced = text.split(/\s+/);
  const parted = text.includes(",") || !spaced.every((each) => LABELS.test(each)) ? text.split(",") : spaced;
  const joints = parted.map((each) => each.trim()).filter(Boolean);
  return joints.length === 1 && (control.low ?? 1) < 2 ? joints[0] : joints;
}

/** The edits for a text; an empty one takes what can be left out away. */
export function editsFor(control: Control, text: string): readonly Edit[] {
  if (text.trim() === "" && canBeLeftOut(control)) return isThere(control) ? [{ op: "take_out", path: control.path }] : [];
  return [{ op: "put", path: control.path, value: valueTyped(control, text) }];
}

export const isThere = (control: Control): boolean => control.value !== undefined && control.value !== null;
export const canBeLeftOut = (control: Control): boolean => control.optional === true;

/** Problems to be said at a control: its own, and those within it that no finer control shows. */
export function problemsOf(control: Control, all: readonly Problem[]): readonly Problem[] {
  const inner = control.items ?? [];
  return all.filter(
    ({ path }) => path.length > 0 && isUnder(path, control.path) && !inner.some((item) => isUnder(path, item.path)),
  );
}

/** Whether anything is wrong in a control, at whatever depth. */
export const hasProblems = (control: Control, all: readonly Problem[]): boolean => all.some(({ path }) => path.length > 0 && isUnder(path, control.path));

export const isControlAt = (control: Control, path: readonly (string | number)[]): boolean => samePath(control.path, path);
