// The course of a tube as a strip of tiles, to be added to, moved, repeated and taken out of.
import { useComputed, useSignal } from "@preact/signals";
import { useLayoutEffect, useRef } from "preact/hooks";
import { made } from "./made";
import type { CellKind, Course, Path, Tile } from "../contract";
import { design } from "../state";
import { say } from "../words";
import { tell, tile as chosen } from "./choices";
import { carry, drag, type Drag } from "./dragging";
import { courses } from "./meant";
import { keyOf, pathOf } from "./paths";
import { TileDeeds } from "./tile_deeds";
import { added, addedAt, groupOf, inOrder, isGroup, listOf, moved, placeIn, removed, repeated, stepped, tileAt, type Changed } from "./tiles";

/** Make a change of the strip, go with its tile, and say what happened. */
export async function make(change: Changed | null, words: (course: Course, path: Path) => string): Promise<void> {
  if (!change || change.edits.length === 0) return;
  if (!(await made(change.edits))) return;
  const now = courseNow(change.path);
  if (now && tileAt(now, change.path)) chosen.value = keyOf(change.path);
  if (now) tell(words(now, change.path));
}

/** The course that a place is of, as the file has it now. */
function courseNow(path: Path): Course | null {
  return courses().find((course) => keyOf(listOf(course)) === keyOf(path.slice(0, listOf(course).length))) ?? null;
}

/** What a tile is called; a group by what is in it, and how often. */
export const calledTile = (tile: Tile): string => (isGroup(tile) ? say("piece group", { times: tile.repeat, tiles: tile.tiles.map(calledTile).join(", ") }) : tile.label);

const nameAt = (course: Course, path: Path): string => {
  const tile = tileAt(course, path);
  return tile ? calledTile(tile) : "";
};
export const toldPlace =
  (key: string) =>
  (course: Course, path: Path): string =>
    say(key, { tile: nameAt(course, path), ...placeIn(course, path) });

export function Strip({ course }: { course: Course }) {
  const strip = useRef<HTMLDivElement>(null);
  const asked = useSignal(false); // whether the keyboard follows the tile that is meant
  const list = listOf(course);
  const mine = useComputed(() => (chosen.value === null ? null : pathOf(chosen.value)));
  const at = mine.value && tileAt(course, mine.value) ? mine.value : null;
  // with every change of the tiles, before another key can be pressed
  useLayoutEffect(() => {
    const key = chosen.value;
    if (asked.value && key !== null && isNearby(strip.current)) tileElement(strip.current, key)?.focus();
  });
  const follow = (change: Changed | null, words: string): void => {
    asked.value = true;
    void make(change, toldPlace(words));
  };
  const letDown = (course: Course) => (now: Drag): void => {
    if (!now.to) return;
    const kind = course.kinds[Number(now.what)];
    if (now.kind && kind) void make(addedAt(now.to.list, now.to.index, kind.cell), toldPlace("piece tile added"));
    else if (!now.kind) void make(moved(course, pathOf(now.what), now.to.list, now.to.index), toldPlace("piece tile moved"));
  };
  const held = { strip: () => strip.current, let: letDown(course) };
  const press = (event: KeyboardEvent): void => {
    const under = (event.target as HTMLElement).closest<HTMLElement>("[data-path]")?.dataset["path"];
    const path = asked.value && at ? keyOf(at) : under; // the focus may still be on its way there
    if (under !== undefined && path !== undefined && pressed(event, course, pathOf(path), follow)) event.preventDefault();
  };
  const first = course.tiles[0];
  const stop = at ?? first?.path ?? list;
  return (
    <div class="course" data-dragging={drag.value !== null}>
      <div
        class="strip"
        ref={strip}
        role="group"
        aria-label={say("piece course")}
        aria-describedby="strip-keys"
        onKeyDown={press}
        onPointerDown={(event) => {
          const path = (event.target as HTMLElement).closest<HTMLElement>("[data-path]")?.dataset["path"];
          asked.value = false;
          if (path !== undefined) carry(event, path, false, held);
        }}
      >
        <Tiles tiles={course.tiles} stop={keyOf(stop)} />
      </div>
      <p id="strip-keys" class="keys">
        {say("piece strip keys")}
      </p>
      <Kinds course={course} at={at} held={held} />
      {at && <TileDeeds course={course} path={at} />}
      <Carried course={course} />
    </div>
  );
}

const tileElement = (strip: HTMLElement | null, key: string): HTMLElement | undefined =>
  [...(strip?.querySelectorAll<HTMLElement>("button[data-path]") ?? [])].find((each) => each.dataset["path"] === key);

/** Whether the focus is in the strip, or was on a tile that is gone. */
const isNearby = (strip: HTMLElement | null): boolean => document.activeElement === document.body || strip?.contains(document.activeElement) === true;

/** What a key does at a tile; answers whether it did something. */
function pressed(event: KeyboardEvent, course: Course, path: Path, follow: (change: Changed | null, words: string) => void): boolean {
  if (event.ctrlKey || event.metaKey || event.altKey) return false;
  const way = event.key === "ArrowRight" || event.key === "ArrowDown" ? 1 : event.key === "ArrowLeft" || event.key === "ArrowUp" ? -1 : 0;
  const fixed = design.value?.read_only === true;
  if (way !== 0 && event.shiftKey) {
    if (!fixed) follow(stepped(course, path, way), "piece tile moved");
  } else if (way !== 0 || event.key === "Home" || event.key === "End") {
    const order = inOrder(course.tiles);
    const here = order.findIndex((one) => keyOf(one.path) === keyOf(path));
    const to = event.key === "Home" ? order[0] : event.key === "End" ? order.at(-1) : order[here + way];
    follow(null, "");
    if (to) chosen.value = keyOf(to.path);
  } else if (fixed) {
    return false;
  } else if (event.key === "Delete" || event.key === "Backspace") {
    follow(removed(course, path), "piece tile removed");
  } else if (event.key === "+" || event.key === "-") {
    const times = (tileAt(course, path)?.repeat ?? 1) + (event.key === "+" ? 1 : -1);
    follow(repeated(course, path, times), "piece tile repeated");
  } else return false;
  return true;
}

function Tiles({ tiles, stop }: { tiles: readonly Tile[]; stop: string }) {
  return (
    <>
      {tiles.map((tile) => (isGroup(tile) ? <Group key={keyOf(tile.path)} tile={tile} stop={stop} /> : <OneTile key={keyOf(tile.path)} tile={tile} stop={stop} />))}
    </>
  );
}

/** How a tile stands to what is carried. */
function dropMark(key: string): string | undefined {
  const to = drag.value?.to;
  return to?.beside === key ? (to.after ? "after" : "before") : undefined;
}

function OneTile({ tile, stop }: { tile: Tile; stop: string }) {
  const key = keyOf(tile.path);
  return (
    <button
      type="button"
      class="tile"
      data-path={key}
      data-drop={dropMark(key)}
      data-carried={drag.value?.what === key}
      tabIndex={stop === key ? 0 : -1}
      aria-pressed={chosen.value === key}
      title={[tile.label, tile.turns].filter(Boolean).join(": ")}
      onClick={() => (chosen.value = chosen.value === key ? null : key)}
      onFocus={(event) => event.currentTarget.matches(":focus-visible") && (chosen.value = key)}
    >
      <img src={tile.picture} alt="" draggable={false} />
      <span>{tile.label}</span>
    </button>
  );
}

function Group({ tile, stop }: { tile: Tile; stop: string }) {
  const key = keyOf(tile.path);
  const name = calledTile(tile);
  return (
    <div class="bundle" data-carried={drag.value?.what === key}>
      <button
        type="button"
        class="tile times"
        data-path={key}
        data-drop={dropMark(key)}
        tabIndex={stop === key ? 0 : -1}
        aria-pressed={chosen.value === key}
        aria-label={name}
        title={name}
        onClick={() => (chosen.value = chosen.value === key ? null : key)}
        onFocus={(event) => event.currentTarget.matches(":focus-visible") && (chosen.value = key)}
      >
        <b>{tile.repeat}×</b>
      </button>
      <Tiles tiles={tile.tiles} stop={stop} />
    </div>
  );
}

/** The kinds of cell to add: pressed, it comes behind the tile that is meant; or it is dragged. */
function Kinds({ course, at, held }: { course: Course; at: Path | null; held: Parameters<typeof carry>[3] }) {
  if (design.value?.read_only) return null;
  const times = at ? (groupOf(course, at)?.repeat ?? 1) : 1;
  const where = say(!at ? "piece add at end" : times > 1 ? "piece add behind in" : "piece add behind", { tile: at ? nameAt(course, at) : "", times });
  return (
    <div class="kinds" role="group" aria-label={say("piece add tile")}>
      <span class="kinds-words">{where}</span>
      {course.kinds.map((kind, i) => (
        <Kind key={kind.label} kind={kind} press={(event) => carry(event, String(i), true, held)} add={() => void make(added(course, at, kind.cell), toldPlace("piece tile added"))} />
      ))}
    </div>
  );
}

function Kind({ kind, press, add }: { kind: CellKind; press: (event: PointerEvent) => void; add: () => void }) {
  return (
    <button type="button" class="tile kind" aria-label={say("piece add one", { tile: kind.label })} title={[kind.label, kind.turns].filter(Boolean).join(": ")} onPointerDown={press} onClick={add}>
      <img src={kind.picture} alt="" draggable={false} />
      <span>{kind.label}</span>
    </button>
  );
}

/** What is carried goes with the hand. */
function Carried({ course }: { course: Course }) {
  const now = drag.value;
  if (!now) return null;
  const tile = now.kind ? course.kinds[Number(now.what)] : tileAt(course, pathOf(now.what));
  if (!tile) return null;
  return (
    <div class="carried" aria-hidden="true" style={{ left: `${now.x}px`, top: `${now.y}px` }}>
      {tile.picture ? <img src={tile.picture} alt="" /> : <b>{tile.label}</b>}
    </div>
  );
}
