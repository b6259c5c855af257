// Putting a part of an assembly on or between others, and tying joints, by picking in the picture.
import { made } from "./made";
import type { Edit, Path } from "../contract";
import { design } from "../state";
import { say } from "../words";
import { controlAt } from "./balloons";
import { tapping, tell } from "./choices";
import { partOf } from "./picking";

/** The balloon picked belongs to a part: set the waiting part on it, or between it and another. */
export async function pickPart(joint: string): Promise<void> {
  const now = tapping.value;
  const other = partOf(joint);
  if (other === "" || (now?.does !== "on" && now?.does !== "between")) return;
  if (other === now.part) return tell(say("piece part itself", { part: other }));
  if (now.does === "on") {
    tapping.value = null;
    if (await made(placed(now.at, "on", other))) tell(say("piece part on", { part: now.part, other }));
  } else if (now.first === null || now.first === other) {
    tapping.value = { ...now, first: other };
    tell(say("piece part first", { part: other }));
  } else {
    tapping.value = null;
    const pair = [now.first, other];
    if (await made(placed(now.at, "between", pair))) tell(say("piece part between", { part: now.part, first: now.first, second: other }));
  }
}

/** A part is on others or between them, never both. */
function placed(at: Path, key: "on" | "between", value: unknown): Edit[] {
  const other = key === "on" ? "between" : "on";
  const is = controlAt(design.value?.controls ?? [], [...at, other])?.value;
  const away: Edit[] = is === undefined || is === null ? [] : [{ op: "take_out", path: [...at, other] }];
  return [...away, { op: "put", path: [...at, key], value }];
}

/** A joint was picked: the first or the second of a tie, or one more of a list. */
export async function pickJoint(joint: string): Promise<void> {
  const now = tapping.value;
  if (now?.does === "joint") {
    tapping.value = null;
    if (await made(appended(now.into, joint))) tell(say("piece joint taken", { joint }));
  } else if (now?.does === "tie") {
    const ofParts = now.to.at(-1) === "ties"; // that are tied to one another; balloons more join any two
    if (now.first === null || now.first === joint || (ofParts && partOf(now.first) === partOf(joint))) {
      tapping.value = { ...now, first: joint };
      tell(say("piece tie first", { joint }));
    } else {
      tapping.value = { ...now, first: null };
      if (await made(appended(now.to, [now.first, joint]))) tell(say("piece tied", { first: now.first, second: joint }));
    }
  }
}

/** One more item of a list that may not be there yet; what is one thing becomes the other. */
function appended(path: Path, value: unknown): Edit[] {
  const there = controlAt(design.value?.controls ?? [], path)?.value;
  if (Array.isArray(there)) return [{ op: "insert", path: [...path, there.length], value }];
  if (there === undefined || there === null) return [{ op: "put", path, value: [value] }];
  return [{ op: "put", path, value: [there, value] }];
}
