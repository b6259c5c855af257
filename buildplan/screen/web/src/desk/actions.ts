// What can be done with the open design: changes one after another, each on the version before it.
import { doToCard, getDesign, getFacts, getHome, getPiece, hasMet, NotThere, postBack, postEdits, putText, Refused } from "./api";
import type { CardDeed, Worked } from "./api";
import type { Design, Edit, Made, Met } from "./contract";
import { connected, design, facts, home, met, missing, notice, piece, saving, unworkable, wait } from "./state";
import { say, sentence } from "./words";

/** Say what went wrong, in the server's words where it has some. */
export function tellError(error: unknown): void {
  if (error instanceof NotThere) connected.value = false;
  else if (error instanceof Refused) notice(sentence(error.message), true);
  else throw error;
}

let asked = 0;

/** Home as it is now; of answers that come late the newest question's stands. */
export async function loadHome(): Promise<void> {
  const mine = ++asked;
  try {
    const found = await getHome();
    if (mine === asked) home.value = found;
  } catch (error) {
    tellError(error);
  }
}

/** What was refused, to be said at its place; all else is told. */
export function refusal(error: unknown): string {
  if (error instanceof Refused) return sentence(error.message);
  tellError(error);
  return "";
}

export async function cardDeed(name: string, deed: CardDeed, newName?: string): Promise<Made> {
  const made = await doToCard(name, deed, newName);
  await loadHome();
  return made;
}

/** Take over a design as the server has it, and have it worked out. */
function take(found: Design): void {
  const was = design.value;
  design.value = found;
  if (was?.name !== found.name) {
    facts.value = piece.value = unworkable.value = met.value = null;
  }
  if (was?.name !== found.name || was.version !== found.version) void loadWorked(found.name, found.version);
}

export async function openDesign(name: string): Promise<void> {
  missing.value = null;
  if (design.value?.name !== name) design.value = null;
  try {
    take(await getDesign(name));
  } catch (error) {
    if (error instanceof Refused && error.status === 404) missing.value = sentence(error.message);
    else tellError(error);
  }
}

/** Facts and shape of a version; asked again when the server says that they are there. */
export async function loadWorked(name: string, of: string): Promise<void> {
  const still = (): boolean => design.value?.name === name && design.value.version === of;
  const cannot = <T>(found: Worked<T>): void => {
    if (found.state === "cannot" && still()) unworkable.value = { name, version: of, value: found.problems };
  };
  try {
    await Promise.all([
      getFacts(name, of).then((found) => {
        if (found.state === "there" && still()) facts.value = { name, version: of, value: found.value };
        if (found.state === "working" && found.words && still()) wait.value = { name, version: of, value: found.words };
        cannot(found);
      }),
      getPiece(name, of).then((found) => {
        if (found.state === "there" && still()) piece.value = { name, version: of, value: found.value };
        cannot(found);
      }),
    ]);
  } catch (error) {
    // a version that another has followed is not asked about any more: that one is worked out
    if (still() && !(error instanceof Refused && error.status === 409)) tellError(error);
  }
}

type Change = (name: string, base: string) => Promise<Design | Met>;
/** Whether a change stands in the file, met another one, or was not made. */
export type Outcome = "stands" | "met" | "failed";

let queue: Promise<unknown> = Promise.resolve();
let waiting = 0;
let unsaved: (() => Promise<unknown>) | null = null;

/** What is still being written is saved before anything else is done with the file. */
export function saveFirst(save: (() => Promise<unknown>) | null): void {
  unsaved = save;
}

/** Make a change after those before it. */
function change(name: string, make: Change): Promise<Outcome> {
  waiting += 1;
  saving.value = "saving";
  const done = queue.then(async (): Promise<Outcome> => {
    let outcome: Outcome = "failed";
    try {
      if (design.value?.name === name) outcome = await taken(await make(name, design.value.version));
    } catch (error) {
      tellError(error);
    }
    waiting -= 1;
    if (outcome === "failed") saving.value = "not saved";
    else if (waiting === 0) saving.value = "saved";
    return outcome;
  });
  queue = done;
  return done;
}

async function taken(answer: Design | Met): Promise<Outcome> {
  if (!hasMet(answer)) {
    take(answer);
    return "stands";
  }
  met.value = answer;
  if (design.value) await openDesign(design.value.name);
  return "met";
}

const open = (): string => design.value?.name ?? "";

/** Change values of the open design. */
export async function edit(edits: readonly Edit[]): Promise<Outcome> {
  await unsaved?.();
  return change(open(), (name, base) => postEdits(name, base, edits));
}

/** Take a whole text as the open design's file; `base` is the version that it was written on. */
export const saveText = (text: string, base: string): Promise<Outcome> => change(open(), (name) => putText(name, base, text));

async function step(way: "undo" | "redo"): Promise<Outcome> {
  await unsaved?.();
  return change(open(), (name, base) => postBack(name, base, way));
}

export const undo = (): Promise<Outcome> => step("undo");
export const redo = (): Promise<Outcome> => step("redo");

/** The file changed, here in another window or by another program. */
export async function changedElsewhere(name: string, to: string, by: "outside" | "desk"): Promise<void> {
  await queue;
  if (design.value?.name !== name || design.value.version === to) return;
  await openDesign(name);
  if (by === "outside") notice(say("changed outside", { file: `${name}.yaml` }));
}
