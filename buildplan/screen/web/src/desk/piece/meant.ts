// What a tile of the course stands for in the picture: the balloons of its cells.
import type { Piece } from "../../data";
import type { Course, Tile } from "../contract";
import { design, piece, version } from "../state";
import { tile as chosen } from "./choices";
import { pathOf } from "./paths";
import { inOrder, tileAt } from "./tiles";

/** Every course of the open design: its own, or those of its parts. */
export function courses(): readonly Course[] {
  const own = design.value?.course;
  return own ? [own, ...(design.value?.courses ?? [])] : (design.value?.courses ?? []);
}

/** The balloons of the tile that is meant; none while the picture is still of an older version. */
export function meantLinks(): readonly string[] {
  const found = piece.value;
  if (chosen.value === null || !found || found.version !== version.value) return [];
  const path = pathOf(chosen.value);
  return courses().flatMap((course) => {
    const tile = tileAt(course, path);
    return tile ? linksOf(course, tile, found.value.piece) : [];
  });
}

/** The balloons of the cells that a tile stands for: those between the joints of a cell's two braces
    and the joints that it skips. */
export function linksOf(course: Course, tile: Tile, piece: Pick<Piece, "braces" | "cells" | "links">): string[] {
  const numbers = inOrder([tile]).flatMap(({ cells }) => cells);
  const sections = new Map(piece.braces.map(({ number, section }) => [number, section]));
  const cellsAt = new Map<string, Set<number>>();
  for (const [i, part] of (course.parts.length > 0 ? course.parts : [""]).entries()) {
    const own = piece.cells.filter(({ first }) => part === "" || sections.get(first)?.[0]?.startsWith(`${part}.`));
    for (const number of numbers) {
      const cell = own[number - 1];
      if (!cell) continue;
      for (const joint of [...(sections.get(cell.first) ?? []), ...(sections.get(cell.second) ?? []), ...cell.skipped]) {
        cellsAt.set(joint, (cellsAt.get(joint) ?? new Set()).add(i * piece.cells.length + number));
      }
    }
  }
  const within = (start: string, finish: string): boolean => [...(cellsAt.get(start) ?? [])].some((cell) => cellsAt.get(finish)?.has(cell));
  return piece.links.filter(({ start, finish }) => within(start, finish)).map(({ id }) => id);
}
