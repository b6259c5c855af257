// Places in the design file.
import type { Path } from "../contract";

export const keyOf = (path: Path): string => JSON.stringify(path);
export const pathOf = (key: string): Path => JSON.parse(key) as Path;
export const samePath = (one: Path, other: Path): boolean => keyOf(one) === keyOf(other);
export const isUnder = (path: Path, above: Path): boolean => above.every((step, i) => path[i] === step);
/** The list or the mapping that a place lies in. */
export const holderOf = (path: Path): Path => path.slice(0, -1);
/** Which item of its list a place is, from 0. */
export const indexIn = (path: Path): number => Number(path.at(-1) ?? 0);
