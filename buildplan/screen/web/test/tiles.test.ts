import { describe, expect, it } from "vitest";
import type { Course, Edit, Path, Tile } from "../src/desk/contract";
import { linksOf } from "../src/desk/piece/meant";
import { added, advanced, joined, laidOut, moved, removed, repeated, stepped, type Changed } from "../src/desk/piece/tiles";

type Item = string | { repeat: number; cells: Item[] };
const AT: Path = ["course"];

function tilesOf(items: readonly Item[], at: Path): Tile[] {
  return items.map((item, i) => {
    const path = [...at, i];
    const bare = { path, label: String(item), cells: [], outer: 1, inner: 1, turns: "", picture: "" };
    if (typeof item === "string") return { ...bare, cell: item, repeat: 1, tiles: [] };
    return { ...bare, cell: null, repeat: item.repeat, tiles: tilesOf(item.cells, [...path, "cells"]) };
  });
}

const courseOf = (items: readonly Item[]): Course => ({
  path: AT,
  parts: [],
  tiles: tilesOf(items, AT),
  kinds: [{ cell: "tip", label: "tip", outer: 2, inner: 0, turns: "", picture: "" }],
  turn: null,
  sides: [],
  short: "",
});

/** What a list of edits makes of a course, done to plain data one after another. */
function after(items: readonly Item[], change: Changed | null): unknown {
  const file = { course: structuredClone(items) as unknown[] };
  for (const edit of change?.edits ?? []) done(file, edit);
  return file.course;
}

function done(file: unknown, edit: Edit): void {
  if (!("path" in edit)) throw new Error(edit.op);
  const steps = [...edit.path];
  const last = steps.pop() as number;
  const holder = steps.reduce<unknown>((each, step) => (each as Record<string | number, unknown>)[step], file) as unknown[];
  if (edit.op === "insert") holder.splice(last, 0, edit.value);
  else if (edit.op === "take_out") holder.splice(last, 1);
  else if (edit.op === "move") holder.splice(edit.to, 0, ...holder.splice(last, 1));
  else if (edit.op === "put") holder[last] = edit.value;
}

const GROUP: Item[] = ["a", { repeat: 3, cells: ["b", "c"] }, "d"];

describe("the strip of a course", () => {
  const course = courseOf(GROUP);

  it("moves a tile within its list, into a group and out of it", () => {
    expect(after(GROUP, moved(course, ["course", 0], AT, 3))).toEqual([{ repeat: 3, cells: ["b", "c"] }, "d", "a"]);
    expect(after(GROUP, moved(course, ["course", 0], ["course", 1, "cells"], 1))).toEqual([{ repeat: 3, cells: ["b", "a", "c"] }, "d"]);
    expect(after(GROUP, moved(course, ["course", 1, "cells", 1], AT, 0))).toEqual(["c", "a", { repeat: 3, cells: ["b"] }, "d"]);
    expect(moved(course, ["course", 1], ["course", 1, "cells"], 0)).toBeNull();
  });

  it("knows where a tile is afterwards", () => {
    expect(moved(course, ["course", 0], ["course", 1, "cells"], 1)?.path).toEqual(["course", 0, "cells", 1]);
    expect(moved(course, ["course", 0], AT, 3)?.path).toEqual(["course", 2]);
  });

  it("steps by keys through every place that there is, and back", () => {
    let items: Item[] = GROUP;
    let path: Path = ["course", 0];
    const seen: unknown[] = [];
    for (let i = 0; i < 4; i += 1) {
      const change = stepped(courseOf(items), path, 1);
      items = after(items, change) as Item[];
      path = change?.path ?? path;
      seen.push(items);
    }
    expect(seen).toEqual([
      [{ repeat: 3, cells: ["a", "b", "c"] }, "d"],
      [{ repeat: 3, cells: ["b", "a", "c"] }, "d"],
      [{ repeat: 3, cells: ["b", "c", "a"] }, "d"],
      [{ repeat: 3, cells: ["b", "c"] }, "a", "d"],
    ]);
  });

  it("takes a group away with its last tile, and never the last of all", () => {
    const one: Item[] = ["a", { repeat: 2, cells: ["b"] }];
    expect(after(one, removed(courseOf(one), ["course", 1, "cells", 0]))).toEqual(["a"]);
    expect(removed(courseOf(["a"]), ["course", 0])).toBeNull();
    expect(removed(course, ["course", 0])?.path).toEqual(["course", 0]);
  });

  it("repeats a tile, and lays a group out again", () => {
    const twice = after(["a"], repeated(courseOf(["a"]), ["course", 0], 2)) as Item[];
    expect(twice).toEqual([{ repeat: 2, cells: ["a"] }]);
    expect(after(twice, repeated(courseOf(twice), ["course", 0], 1))).toEqual(["a"]);
    expect(after(GROUP, laidOut(course, ["course", 1]))).toEqual(["a", "b", "c", "b", "c", "b", "c", "d"]);
    expect(after(GROUP, joined(course, ["course", 2]))).toEqual(["a", { repeat: 1, cells: [{ repeat: 3, cells: ["b", "c"] }, "d"] }]);
  });

  it("adds behind the tile that is meant, and makes a named cell of its advances", () => {
    expect(after(GROUP, added(course, ["course", 1, "cells", 0], "x"))).toEqual(["a", { repeat: 3, cells: ["b", "x", "c"] }, "d"]);
    expect(after(GROUP, added(course, null, "x"))).toEqual([...GROUP, "x"]);
    expect(after(GROUP, advanced(course, ["course", 0], 2, 0))).toEqual(["tip", ...GROUP.slice(1)]);
    expect(after(GROUP, advanced(course, ["course", 0], 3, 1))).toEqual([[3, 1], ...GROUP.slice(1)]);
    expect(advanced(course, ["course", 0], 0, 0)).toBeNull();
  });
});

describe("what a tile is in the picture", () => {
  // a ladder of two cells that goes straight on, and of one that skips A4: by hand
  const section = (outer: number, inner: number, part = ""): string[] => [`${part}A${outer}`, `${part}B${inner}`];
  const ladder = (part = "", from = 0) => ({
    braces: [section(1, 1, part), section(2, 2, part), section(3, 3, part), section(5, 3, part)].map((each, i) => ({ number: from + i + 1, section: each })),
    cells: [1, 2, 3].map((number) => ({ first: from + number, second: from + number + 1, skipped: number === 3 ? [`${part}A4`] : [] })),
    links: ["A1 A2", "A2 A3", "A3 A4", "A4 A5", "B1 B2", "B2 B3", "A1 B1", "A2 B2", "A3 B3", "A5 B3"].map((ends) => {
      const [start = "", finish = ""] = ends.split(" ").map((end) => part + end);
      return { id: `${start}-${finish}`, balloon: "", role: "chain" as const, start, finish, neck: "", tail: "", moment: 0, held: 0 };
    }),
  });
  const tile = (...cells: number[]): Tile => ({ path: [...AT, 0], cell: "straight", cells, label: "", repeat: 1, outer: 1, inner: 1, turns: "", picture: "", tiles: [] });

  it("is the balloons of its cells", () => {
    expect(linksOf(courseOf([]), tile(2), ladder())).toEqual(["A2-A3", "B2-B3", "A2-B2", "A3-B3"]);
    expect(linksOf(courseOf([]), tile(3), ladder())).toEqual(["A3-A4", "A4-A5", "A3-B3", "A5-B3"]);
    // not the chain's balloons between cells that are not meant
    expect(linksOf(courseOf([]), tile(1, 3), ladder())).not.toContain("A2-A3");
    expect(linksOf(courseOf([]), tile(), ladder())).toEqual([]);
  });

  it("is those of every part that is built so, and of no other", () => {
    const [one, other] = [ladder("L."), ladder("R.", 4)];
    const both = { braces: [...one.braces, ...other.braces], cells: [...one.cells, ...other.cells], links: [...one.links, ...other.links] };
    expect(linksOf({ ...courseOf([]), parts: ["R"] }, tile(1), both)).toEqual(["R.A1-R.A2", "R.B1-R.B2", "R.A1-R.B1", "R.A2-R.B2"]);
    expect(linksOf({ ...courseOf([]), parts: ["L", "R"] }, tile(1), both)).toHaveLength(8);
  });
});
