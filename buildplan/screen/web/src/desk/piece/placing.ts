// Putting a part of an assembly on or between others, and tying joints, by picking in the picture.
import { made } from "./made";
import type { Edit, Path } from "../contract";
import { design } from "../state";
import { say } from "../words";
import { controlAt } from "./balloons";
import { aimed, tapping, tell } from "./choices";
import { SIDES, type Face } from "./faces";
import { partOf } from "./picking";

const PLACES = [...SIDES, "between"] as const; // the keys of the file that say where a part is set
type Place = (typeof PLACES)[number];

/** A side of a part was picked: the waiting part is set there. */
export async function pickSide({ part: other, side }: Face): Promise<void> {
  const now = tapping.value;
  if (now?.does !== "side" || other === now.part) return;
  tapping.value = aimed.value = null;
  if (await made(placed(now.at, side, other))) tell(say(`piece part ${side}`, { part: now.part, other }));
}

/** One of the two parts that the waiting one is set between, or lies across. */
export async function pickPart(other: string): Promise<void> {
  const now = tapping.value;
  if (other === "" || (now?.does !== "across" && now?.does !== "between")) return;
  if (other === now.part) return tell(say("piece part itself", { part: other }));
  if (now.first === null || now.first === other) {
    tapping.value = { ...now, first: other };
    return tell(say("piece part first", { part: other }));
  }
  tapping.value = null;
  const pair = [now.first, other];
  const done = await made(placed(now.at, now.does === "across" ? "on" : "between", pair));
  if (done) tell(say(`piece part ${now.does}`, { part: now.part, first: now.first, second: other }));
}

/** A part is set at one place alone. */
function placed(at: Path, key: Place, value: unknown): Edit[] {
  const there = (other: Place): boolean => controlAt(design.value?.controls ?? [], [...at, other])?.value != null;
  const away = PLACES.filter((other) => other !== key && there(other)).map((other): Edit => ({ op: "take_out", path: [...at, other] }));
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
