import { describe, expect, it } from "vitest";
import { changeBetween } from "../src/desk/file/editor";
import { corners, even, joined, outlineOf, pathOf, type Spot, type Stroke } from "../src/desk/home/outline";
import { hashOf, placeOf, TABS } from "../src/desk/route";

const far = (a: Spot, b: Spot): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** The area that a closed line encloses (the shoelace formula: Gauss). */
function area(spots: Stroke): number {
  const sum = spots.reduce((all, [x, y], i) => {
    const next = spots[(i + 1) % spots.length] as Spot;
    return all + x * next[1] - next[0] * y;
  }, 0);
  return Math.abs(sum) / 2;
}

const circle = (radius: number, from: number, to: number, count = 90): Stroke =>
  Array.from({ length: count + 1 }, (_, i): Spot => {
    const turned = from + ((to - from) * i) / count;
    return [300 + radius * Math.cos(turned), 300 + radius * Math.sin(turned)];
  });

describe("an outline drawn by hand", () => {
  it("encloses what was drawn round, closed by itself", () => {
    const drawn = outlineOf([circle(200, 0, 2 * Math.PI * 0.97)]);
    expect(area(drawn) / (Math.PI * 200 ** 2)).toBeGreaterThan(0.97);
    expect(area(drawn) / (Math.PI * 200 ** 2)).toBeLessThan(1.01);
    expect(pathOf(drawn)).toMatch(/^M[\d. ]+(L[\d. ]+)+Z$/);
  });

  it("puts strokes end to end, whichever way each was drawn", () => {
    const [lower, upper] = [circle(200, 0, Math.PI), circle(200, Math.PI, 2 * Math.PI)];
    const back = [...lower].reverse();
    for (const strokes of [[lower, upper], [upper, lower], [back, upper], [upper, back]]) {
      expect(area(outlineOf(strokes)) / (Math.PI * 200 ** 2)).toBeCloseTo(1, 1);
      expect(joined(strokes)).toHaveLength(lower.length + upper.length);
    }
  });

  it("is a little smoother, and its corners stay where they are", () => {
    const square: Stroke = [[100, 100], [500, 100], [500, 500], [100, 500]];
    const spots = even(square);
    expect(corners(spots).size).toBe(4);
    const drawn = outlineOf([square]);
    for (const corner of square) expect(Math.min(...drawn.map((spot) => far(spot, corner)))).toBeLessThan(6);
    const shaking = circle(200, 0, 2 * Math.PI, 400).map(([x, y], i): Spot => {
      const shaken = 1 + 0.015 * Math.sin((40 * 2 * Math.PI * i) / 400);
      return [300 + (x - 300) * shaken, 300 + (y - 300) * shaken];
    });
    const rough = (line: Stroke): number => Math.max(...line.map(([x, y]) => Math.abs(Math.hypot(x - 300, y - 300) - 200)));
    expect(rough(outlineOf([shaking]))).toBeLessThan(0.7 * rough(even(shaking)));
  });

  it("is none where next to nothing is enclosed", () => {
    expect(outlineOf([])).toEqual([]);
    expect(outlineOf([[[10, 10], [12, 11]]])).toEqual([]);
    expect(outlineOf([[[0, 300], [600, 300]]])).toEqual([]);
  });
});

describe("a text taken over from elsewhere", () => {
  it("changes only what differs", () => {
    const was = "crew: 2\nunits: in\n";
    for (const now of ["crew: 3\nunits: in\n", "crew: 2\nunits: in\nspare: 5%\n", "", "aaa", was.repeat(2)]) {
      const change = changeBetween(was, now);
      expect(change && was.slice(0, change.from) + change.insert + was.slice(change.to)).toBe(now);
    }
    expect(changeBetween(was, "crew: 3\nunits: in\n")).toEqual({ from: 6, to: 7, insert: "3" });
    expect(changeBetween(was, was)).toBeNull();
  });
});

describe("the end of the address", () => {
  it("names every place, whatever a design is called", () => {
    for (const name of ["star", "home", "new", "día 2", "a/b", "50%"]) {
      for (const tab of TABS) expect(placeOf(hashOf({ screen: "design", name, tab }))).toEqual({ screen: "design", name, tab });
    }
    expect(placeOf(hashOf({ screen: "new" }))).toEqual({ screen: "new" });
    for (const odd of ["", "#", "#star", "#star/cost", "#%E0%A4%A/file", "#a/b/file"]) expect(placeOf(odd)).toEqual({ screen: "home" });
  });
});
