// The tiles of a course: what each change of the strip is as changes of the file. A change answers
// its edits, and the place of the tile that it was about, as it is afterwards.
import type { Course, Edit, Path, Tile } from "../contract";
import { holderOf, indexIn, isUnder, keyOf, samePath } from "./paths";

export interface Changed {
  edits: readonly Edit[];
  path: Path; // of the tile afterwards
}

const MOST_ADVANCE = 20; // as the file has it

type CellValue = string | readonly number[] | { repeat: number; cells: readonly CellValue[] };

/** A tile as the file has it. */
export function valueOf(tile: Tile): CellValue {
  return tile.cell ?? { repeat: tile.repeat, cells: tile.tiles.map(valueOf) };
}

export const isGroup = (tile: Tile): boolean => tile.cell === null;

/** Every tile in the order in which the keyboard goes through them: a group before what is in it. */
export function inOrder(tiles: readonly Tile[]): Tile[] {
  return tiles.flatMap((tile) => [tile, ...inOrder(tile.tiles)]);
}

export function tileAt(course: Course, path: Path): Tile | undefined {
  return inOrder(course.tiles).find((tile) => samePath(tile.path, path));
}

/** The tiles of the list at a place: those of the course, or of a group. */
function listAt(course: Course, list: Path): readonly Tile[] {
  const group = inOrder(course.tiles).find((tile) => isGroup(tile) && samePath([...tile.path, "cells"], list));
  return group ? group.tiles : course.tiles;
}

/** Where the list of a course stands in the file. */
export const listOf = (course: Course): Path => course.path;

/** The group that a tile lies in. */
export function groupOf(course: Course, path: Path): Tile | undefined {
  const list = holderOf(path);
  return list.at(-1) === "cells" ? tileAt(course, holderOf(list)) : undefined;
}

/** Move a tile so that it comes before the item `index` of a list, as the lists are now. */
export function moved(course: Course, from: Path, list: Path, index: number): Changed | null {
  const tile = tileAt(course, from);
  if (!tile || isUnder(list, from)) return null;
  if (samePath(list, holderOf(from))) {
    const to = index > indexIn(from) ? index - 1 : index;
    return to === indexIn(from) ? null : { edits: [{ op: "move", path: from, to }], path: [...list, to] };
  }
  const gone = emptied(course, from);
  if (isUnder(list, gone)) return null;
  const path = without([...list, index], gone);
  return { edits: [{ op: "take_out", path: gone }, { op: "insert", path, value: valueOf(tile) }], path };
}

/** What goes when a tile does: the group too that it is alone in. */
function emptied(course: Course, path: Path): Path {
  const group = groupOf(course, path);
  return group?.tiles.length === 1 ? emptied(course, group.path) : path;
}

/** A place as it is once another has gone. */
function without(path: Path, gone: Path): Path {
  const at = gone.length - 1;
  const step = path[at];
  const behind = isUnder(path, holderOf(gone)) && typeof step === "number" && step > indexIn(gone);
  return behind ? path.map((each, i) => (i === at ? step - 1 : each)) : path;
}

/** Move a tile one place on or back, into and out of groups too. */
export function stepped(course: Course, path: Path, by: 1 | -1): Changed | null {
  const [list, index] = [holderOf(path), indexIn(path)];
  const tile = tileAt(course, path);
  const next = listAt(course, list)[index + by];
  if (tile && next && isGroup(next) && !isGroup(tile)) return moved(course, path, [...next.path, "cells"], by === 1 ? 0 : next.tiles.length);
  if (next) return moved(course, path, list, by === 1 ? index + 2 : index - 1);
  const group = groupOf(course, path);
  return group ? moved(course, path, holderOf(group.path), indexIn(group.path) + (by === 1 ? 1 : 0)) : null;
}

/** Put a cell behind a tile; at the end where there is none. */
export function added(course: Course, behind: Path | null, cell: string | readonly number[]): Changed {
  const list = behind ? holderOf(behind) : listOf(course);
  const path = [...list, behind ? indexIn(behind) + 1 : listAt(course, list).length];
  return { edits: [{ op: "insert", path, value: cell }], path };
}

export function addedAt(list: Path, index: number, cell: string | readonly number[]): Changed {
  const path = [...list, index];
  return { edits: [{ op: "insert", path, value: cell }], path };
}

/** Take a tile out; afterwards the one before it is meant. The last tile of all stays. */
export function removed(course: Course, path: Path): Changed | null {
  const gone = emptied(course, path);
  if (course.tiles.length === 1 && gone.length === listOf(course).length + 1) return null;
  const order = inOrder(course.tiles);
  const at = order.findIndex((tile) => samePath(tile.path, gone));
  const before = order[at - 1] ?? order.slice(at + 1).find((tile) => !isUnder(tile.path, gone));
  return { edits: [{ op: "take_out", path: gone }], path: without(before?.path ?? [], gone) };
}

/** Lay a tile so many times. */
export function repeated(course: Course, path: Path, times: number): Changed | null {
  const tile = tileAt(course, path);
  if (!tile || times < 1) return null;
  const only = tile.tiles[0];
  if (!isGroup(tile)) return times === 1 ? null : { edits: [{ op: "put", path, value: { repeat: times, cells: [valueOf(tile)] } }], path };
  if (times === 1 && only && tile.tiles.length === 1) return { edits: [{ op: "put", path, value: valueOf(only) }], path };
  return { edits: [{ op: "put", path: [...path, "repeat"], value: times }], path };
}

/** Make a tile a cell in which the chains advance so far: by its name, where it has one. */
export function advanced(course: Course, path: Path, outer: number, inner: number): Changed | null {
  if (outer < 0 || inner < 0 || outer + inner === 0 || Math.max(outer, inner) > MOST_ADVANCE) return null;
  const kind = course.kinds.find((one) => one.outer === outer && one.inner === inner);
  return { edits: [{ op: "put", path, value: kind?.cell ?? [outer, inner] }], path };
}

/** Take a tile and the one before it together, to be repeated as one. */
export function joined(course: Course, path: Path): Changed | null {
  const [list, index] = [holderOf(path), indexIn(path)];
  const tile = tileAt(course, path);
  const before = listAt(course, list)[index - 1];
  if (!tile || !before) return null;
  if (isGroup(before) && before.repeat === 1) {
    const to = [...before.path, "cells"];
    return { edits: moved(course, path, to, before.tiles.length)?.edits ?? [], path: before.path };
  }
  const value = { repeat: 1, cells: [valueOf(before), valueOf(tile)] };
  return { edits: [{ op: "take_out", path }, { op: "put", path: before.path, value }], path: before.path };
}

/** Lay the tiles of a group singly, each as many times as it came. */
export function laidOut(course: Course, path: Path): Changed | null {
  const group = tileAt(course, path);
  if (!group || !isGroup(group)) return null;
  const cells = Array.from({ length: group.repeat }, () => group.tiles.map(valueOf)).flat();
  const [first, ...others] = cells;
  const list = holderOf(path);
  const more = others.map((value, i): Edit => ({ op: "insert", path: [...list, indexIn(path) + 1 + i], value }));
  return first === undefined ? null : { edits: [{ op: "put", path, value: first }, ...more], path };
}

/** Which tile of how many one is, counted in the order of the keyboard. */
export function placeIn(course: Course, path: Path): { place: number; count: number } {
  const order = inOrder(course.tiles);
  return { place: order.findIndex((tile) => keyOf(tile.path) === keyOf(path)) + 1, count: order.length };
}
