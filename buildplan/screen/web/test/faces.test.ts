import { describe, expect, it } from "vitest";
import { AT_THE_SEAT, place, pose } from "../src/camera";
import type { Joint, Point } from "../src/data";
import { faceAt } from "../src/desk/piece/faces";

const box = (part: string, [x, y, z]: Point): Joint[] =>
  [0, 1, 2, 3, 4, 5, 6, 7].map((n) => ({
    label: `${part}.A${n + 1}`,
    at: [x + (n & 1), y + ((n >> 1) & 1), z + ((n >> 2) & 1)],
    place: "",
    links: [],
    steps: [],
  }));
const JOINTS = [...box("L", [0, 0, 0]), ...box("T", [0, 0, 3])];
const seen = (to_eye: Point) => pose({ to_eye, up: [0, 1, 0], about: [0.5, 0.5, 2], across_m: 5, lying: false }, AT_THE_SEAT, 800, 600);
const at = (from: ReturnType<typeof seen>, spot: Point) => {
  const { x, y } = place(from, spot);
  return (without = "") => faceAt(JOINTS, from, x, y, without);
};

describe("sides of parts", () => {
  it("takes what is seen at the spot, not what lies behind it", () => {
    const front = seen([0, 0, 1]);
    expect(at(front, [0.5, 0.3, 4])()).toEqual({ part: "T", side: "in_front_of" });
    expect(at(front, [0.5, 0.3, 4])("T")).toEqual({ part: "L", side: "in_front_of" });
    expect(at(front, [0.5, 0.95, 4])()).toEqual({ part: "T", side: "on" });
    expect(at(front, [2.4, 0.5, 0])()).toBeNull();
  });
  it("knows every side from where it is seen", () => {
    expect(at(seen([1, 0, 0]), [1, 0.3, 0.5])()).toEqual({ part: "L", side: "right_of" });
    expect(at(seen([-1, 0, 0]), [0, 0.3, 0.5])()).toEqual({ part: "L", side: "left_of" });
    expect(at(seen([0, 0, -1]), [0.5, 0.3, 0])()).toEqual({ part: "L", side: "behind" });
    expect(at(seen([0, 1, 0.4]), [0.5, 1, 0.5])()).toEqual({ part: "L", side: "on" });
  });
});
