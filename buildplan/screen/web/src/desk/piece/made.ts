// A change of the file made on this page, and whether it stands there now.
import { edit } from "../actions";
import type { Edit } from "../contract";

export const made = async (edits: readonly Edit[]): Promise<boolean> => (await edit(edits)) === "stands";
