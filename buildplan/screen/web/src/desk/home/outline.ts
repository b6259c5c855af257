// An outline that is drawn by hand: strokes put end to end, closed, smoothed a little.

export type Spot = readonly [number, number];
export type Stroke = readonly Spot[];

const APART = 6; // between spots that are kept, in units of the board
const CORNER_DEG = 55; // what turns more than this is meant as a corner
const REACH = 2; // spots to either side that a corner is looked for over
const PASSES = 2; // times that each spot is moved towards its neighbours
const ENCLOSES = 12; // times APART that an outline must be wide and high to be one

const between = (a: Spot, b: Spot): number => Math.hypot(b[0] - a[0], b[1] - a[1]);

/** Strokes as one line: each is put to the end of it that it is drawn nearest to. */
export function joined(strokes: readonly Stroke[]): Stroke {
  let line: Spot[] = [];
  for (const stroke of strokes) {
    const [first, last] = [stroke[0], stroke.at(-1)];
    if (!first || !last) continue;
    const [start, end] = [line[0], line.at(-1)];
    if (!start || !end) {
      line = [...stroke];
      continue;
    }
    const ways: readonly (readonly [number, () => Spot[]])[] = [
      [between(end, first), () => [...line, ...stroke]],
      [between(end, last), () => [...line, ...[...stroke].reverse()]],
      [between(start, last), () => [...stroke, ...line]],
      [between(start, first), () => [...[...stroke].reverse(), ...line]],
    ];
    line = ways.reduce((best, way) => (way[0] < best[0] ? way : best))[1]();
  }
  return line;
}

/** Spots at even distances along a closed line; its first and last are joined. */
export function even(line: Stroke, apart = APART): Stroke {
  const first = line[0];
  if (!first) return [];
  const spots: Spot[] = [first];
  let at = first;
  for (const next of [...line.slice(1), first]) {
    let far = between(at, next);
    while (far >= apart) {
      at = [at[0] + ((next[0] - at[0]) * apart) / far, at[1] + ((next[1] - at[1]) * apart) / far];
      spots.push(at);
      far = between(at, next);
    }
  }
  if (spots.length > 1 && between(at, first) < apart / 2) spots.pop();
  return spots;
}

const around = (spots: Stroke, i: number): Spot => spots[(i + spots.length) % spots.length] as Spot;

/** By how many degrees a closed line turns at a spot. */
function turnsAt(spots: Stroke, i: number): number {
  const [before, here, after] = [around(spots, i - REACH), around(spots, i), around(spots, i + REACH)];
  const turn = Math.atan2(after[1] - here[1], after[0] - here[0]) - Math.atan2(here[1] - before[1], here[0] - before[0]);
  return (Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn))) * 180) / Math.PI;
}

/** The sharpest spot of each corner. */
export function corners(spots: Stroke): ReadonlySet<number> {
  const turns = spots.map((_, i) => turnsAt(spots, i));
  const sharpest = (i: number): boolean => {
    for (let d = -REACH; d <= REACH; d += 1) {
      const other = turns[(i + d + turns.length) % turns.length] ?? 0;
      if (other > (turns[i] ?? 0) || (other === turns[i] && d < 0)) return false;
    }
    return true;
  };
  return new Set(spots.flatMap((_, i) => ((turns[i] ?? 0) > CORNER_DEG && sharpest(i) ? [i] : [])));
}

/** Each spot moved towards the middle of its neighbours; corners stay where they are. */
export function smooth(spots: Stroke): Stroke {
  const fixed = corners(spots);
  let now = spots;
  for (let pass = 0; pass < PASSES; pass += 1) {
    const was = now;
    now = was.map((spot, i) => {
      if (fixed.has(i)) return spot;
      const [a, b] = [around(was, i - 1), around(was, i + 1)];
      return [(a[0] + 2 * spot[0] + b[0]) / 4, (a[1] + 2 * spot[1] + b[1]) / 4];
    });
  }
  return now;
}

/** The outline that strokes make, as spots; none where they enclose next to nothing. */
export function outlineOf(strokes: readonly Stroke[]): Stroke {
  const spots = smooth(even(joined(strokes)));
  const wide = (axis: 0 | 1): number => {
    const along = spots.map((spot) => spot[axis]);
    return Math.max(...along) - Math.min(...along);
  };
  return spots.length > ENCLOSES && Math.min(wide(0), wide(1)) > ENCLOSES * APART ? spots : [];
}

/** SVG path data (W3C, SVG 1.1, 8.3) of a closed line. */
export function pathOf(spots: Stroke): string {
  const written = spots.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`);
  return written.length ? `M${written.join("L")}Z` : "";
}

/** SVG path data of strokes as they were drawn. */
export const drawnPath = (strokes: readonly Stroke[]): string =>
  strokes.map((stroke) => `M${stroke.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join("L")}`).join("");
