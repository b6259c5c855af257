import jsQR from "jsqr";
import { describe, expect, it } from "vitest";
import { bodyAt, looks, type Body } from "../src/bodies";
import { AT_THE_SEAT, place, pose } from "../src/camera";
import { adler32, codeOf, idsOf, tickIds } from "../src/carry";
import type { Point, Seat, Step } from "../src/data";
import { Keeper, merged, nothing, parsed, type Store } from "../src/keep";
import { logOf } from "../src/log";
import { modulesOf } from "../src/code";
import { labelPattern, namedIn } from "../src/refer";
import { hashOf, placeOf, SCREENS } from "../src/route";

const seat: Seat = { to_eye: [0, 0, 1], up: [0, 1, 0], about: [0, 0, 0], across_m: 2, lying: false };

function step(number: number, turns: number): Step {
  const said = { en: "x" };
  const turn = { moment: 0, name: said, row: said, joints: [], ways: [], links: [], locks: [], readies: [], ready_locks: [], seat };
  return { number, stage: "brace", kind: "brace", title: said, text: said, refers: { en: [] }, check: said, times: 1, work: { brace: 3 }, seat, turns: Array.from({ length: turns }, () => turn) };
}

function store(): Store & { data: Map<string, string> } {
  const data = new Map<string, string>();
  return {
    data,
    getItem: (key) => data.get(key) ?? null,
    setItem: (key, value) => void data.set(key, value),
    removeItem: (key) => void data.delete(key),
    key: (i) => [...data.keys()][i] ?? null,
    get length() {
      return data.size;
    },
  };
}

describe("the camera", () => {
  it("puts what is looked at in the middle, and up is up", () => {
    const from = pose(seat, AT_THE_SEAT, 400, 400);
    expect(place(from, [0, 0, 0])).toMatchObject({ x: 200, y: 200 });
    expect(place(from, [0, 0.5, 0]).y).toBeLessThan(200);
    expect(place(from, [0.5, 0, 0]).x).toBeGreaterThan(200);
  });
  it("sees as much across as the seat asks for", () => {
    for (const [width, height] of [[400, 400], [300, 600], [900, 300]] as const) {
      const from = pose(seat, AT_THE_SEAT, width, height);
      const across = place(from, [1, 0, 0]).x - place(from, [-1, 0, 0]).x;
      expect(across).toBeLessThanOrEqual(width * 1.001);
    }
  });
  it("turned a whole round is where it was", () => {
    const whole = pose(seat, { round: 2 * Math.PI, over: 0, near: 1 }, 300, 300);
    const at = pose(seat, AT_THE_SEAT, 300, 300);
    whole.eye.forEach((value, i) => expect(value).toBeCloseTo(at.eye[i] ?? 0, 9));
  });
});

describe("what is shown", () => {
  const body = (name: string, middle: Point, moment: number): Body => ({
    name, isLink: true, ends: [name], balloon: 0, first: middle, second: middle, middle, radius: 0.1, moment, held: moment,
  });
  const bodies = [body("new", [0, 0, 0], 5), body("before it", [0, 0, 0.5], 1), body("beside it", [0.6, 0, 0.5], 1), body("later", [0, 0.5, 0], 9)];
  const from = pose(seat, AT_THE_SEAT, 400, 400);
  const near = { about: [0, 0, 0] as Point, across: 2, joints: new Set<string>() };
  const shown = { moment: 5, isNew: (one: Body) => one.moment === 5, picked: new Set<Body>(), near };
  it("takes away what stands before new work, and only that", () => {
    expect(looks(bodies, shown, from)).toEqual(["new", "gone", "done", "gone"]);
    expect(looks(bodies, { ...shown, near: null }, from)).toEqual(["new", "done", "done", "gone"]);
  });
  it("is tapped at the nearest body that is drawn", () => {
    const seen = looks(bodies, { ...shown, near: null }, from);
    expect(bodyAt(bodies, seen, from, 200, 200)?.name).toBe("before it");
    expect(bodyAt(bodies, looks(bodies, shown, from), from, 200, 200)?.name).toBe("new");
    expect(bodyAt(bodies, seen, from, 5, 5)).toBeUndefined();
  });
});

describe("a code for ticks", () => {
  const ids = tickIds([step(1, 1), step(2, 9), step(3, 4)]);
  it("knows the published checksum (RFC 1950; the word is the usual example)", () => {
    expect(adler32("Wikipedia")).toBe("11e60398");
  });
  it("brings back exactly what was ticked", () => {
    for (let run = 0; run < 50; run++) {
      const ticked = new Set(ids.filter((_, i) => (i * 7 + run * 3) % 5 < 2));
      expect(idsOf(codeOf("abcdef0123456789", ids, (id) => ticked.has(id)), "abcdef0123456789", ids)).toEqual({ ids: ids.filter((id) => ticked.has(id)) });
    }
  });
  it("refuses a code that is not whole, and one of another design", () => {
    const code = codeOf("abcdef0123456789", ids, () => true);
    expect(idsOf(code.slice(0, -1), "abcdef0123456789", ids)).toEqual({ wrong: "broken" });
    expect(idsOf("hello", "abcdef0123456789", ids)).toEqual({ wrong: "broken" });
    expect(idsOf(code, "0123456789abcdef", ids)).toEqual({ wrong: "other design" });
  });
  it("is read by another library as a QR code", () => {
    const code = codeOf("abcdef0123456789", tickIds(Array.from({ length: 60 }, (_, i) => step(i + 1, 4))), () => true);
    const { path, size: count } = modulesOf(code);
    const dark = new Set([...path.matchAll(/M(\d+ \d+)h1v1h-1z/g)].map((found) => found[1]));
    const [scale, size] = [4, count * 4];
    const pixels = new Uint8ClampedArray(size * size * 4).fill(255);
    for (let y = 0; y < size; y++)
      for (let x = 0; x < size; x++) {
        if (dark.has(`${Math.floor(x / scale)} ${Math.floor(y / scale)}`)) pixels.fill(0, (y * size + x) * 4, (y * size + x) * 4 + 3);
      }
    expect(jsQR(pixels, size, size)?.data).toBe(code);
  });
});

describe("what is kept", () => {
  it("is nothing where the text is none of ours", () => {
    for (const text of [null, "", "{", "[]", "7", '{"ticks":{"a":"yes"},"minutes":{"1":"x"},"place":"y"}']) expect(parsed(text)).toEqual(nothing());
  });
  it("of two windows is of both, the last change of each tick", () => {
    const one = { ...nothing(), ticks: { a: [true, 1], b: [true, 5] } as never };
    const other = { ...nothing(), ticks: { b: [false, 3], c: [true, 2] } as never };
    expect(merged(one, other).ticks).toEqual({ a: [true, 1], b: [true, 5], c: [true, 2] });
    expect(merged(other, one).ticks).toEqual(merged(one, other).ticks);
  });
  it("by another window meanwhile is not lost", () => {
    const shared = store();
    const first = new Keeper(shared, "d", "Star", () => undefined);
    const second = new Keeper(shared, "d", "Star", () => undefined);
    first.write({ ...nothing(), ticks: { a: [true, 1] } });
    second.write({ ...nothing(), ticks: { b: [true, 2] } });
    expect(Object.keys(first.read().ticks).sort()).toEqual(["a", "b"]);
  });
  it("tells of another version of the same design", () => {
    const shared = store();
    new Keeper(shared, "old", "Star", () => undefined).write(nothing());
    expect(new Keeper(shared, "new", "Star", () => undefined).others()).toHaveLength(1);
    expect(new Keeper(shared, "new", "Gate", () => undefined).others()).toHaveLength(0);
  });
  it("says when nothing can be kept", () => {
    let refused = 0;
    new Keeper(null, "d", "Star", () => refused++).write(nothing());
    expect(refused).toBe(1);
  });
});

describe("the log", () => {
  it("has the columns that are read, and quotes what must be (RFC 4180)", () => {
    const log = logOf([step(1, 1), step(2, 1)], { 2: 4.5 }, { 2: 'a "b", c' });
    expect(log).toBe('kind,count,minutes,step,note\r\nbrace,3,4.5,2,"a ""b"", c"\r\n');
  });
});

describe("a note in the log", () => {
  it.each(["=1+1", " =1", "＝1", "'=1", "+44", "-2", "@a", "gold;=1", "\n=1"])("is never a formula: %j", (note) => {
    const log = logOf([step(1, 1)], { 1: 4.5 }, { 1: note });
    const last = log.split("\r\n").slice(1).join("\r\n").split(",").slice(4).join(",");
    const read = last.trim().replace(/^"|"$/g, "");
    expect(read).toMatch(/^(?:'|gold;')/);
    expect(read.replaceAll("'", "")).toBe(note.replaceAll("'", ""));
  });
});

describe("an address", () => {
  it("says a place and is read back", () => {
    for (const screen of SCREENS)
      for (const what of ["", "12", "left.A1", "lock A1+B2", "close rings", "größe #-1"]) expect(placeOf(hashOf({ screen, what }))).toEqual({ screen, what });
  });
  it("leads from the codes of the printed booklet to its step", () => {
    expect(placeOf("#step-12")).toEqual({ screen: "step", what: "12" });
  });
  it("of the start, or of something else, is no place", () => {
    for (const hash of ["", "#", "#main", "#steps", "#step-%", "#find-%E0%A4%A"]) expect(placeOf(hash)).toBeUndefined();
  });
});

describe("words that name joints and steps", () => {
  const labels = labelPattern(["A1", "A10", "L.A1", "A1+B2"]);
  const named = (text: string, refers: readonly (readonly [number, number, number])[] = []) =>
    namedIn(text, labels, refers).map((one) => [text.slice(one.from, one.to), one.place.screen, one.place.what]);
  it("are found whole, and not in the name of a balloon or a chain", () => {
    expect(named("From A10 to L.A1, then A1.")).toEqual([["A10", "find", "A10"], ["L.A1", "find", "L.A1"], ["A1", "find", "A1"]]);
    expect(named("Balloon A1-A10 of chain L.A, A100, XA1")).toEqual([]);
  });
  it("are where the data say, whatever letters stand before", () => {
    expect(named("\u{1f388} as in step 12, at A1", [[13, 2, 12]])).toEqual([["12", "step", "12"], ["A1", "find", "A1"]]);
  });
  it("are none where a piece has no joints", () => {
    expect(namedIn("A1", labelPattern([]), [])).toEqual([]);
  });
});
