// What can be done with the tile that is meant, by buttons: for thumbs, and for those who do not drag.
import type { Course, Path } from "../contract";
import { design } from "../state";
import { say } from "../words";
import { tile as chosen } from "./choices";
import { holderOf, indexIn, keyOf } from "./paths";
import { calledTile, make, toldPlace } from "./strip";
import { added, addedAt, advanced, isGroup, joined, laidOut, removed, repeated, stepped, tileAt, valueOf, type Changed } from "./tiles";

export function TileDeeds({ course, path }: { course: Course; path: Path }) {
  const tile = tileAt(course, path);
  if (!tile || design.value?.read_only) return null;
  const go = (change: Changed | null, words: string) => () => void make(change, toldPlace(words));
  const times = (field: HTMLInputElement): void => {
    const wanted = Number(field.value);
    if (Number.isInteger(wanted) && wanted >= 1) go(repeated(course, path, wanted), "piece tile repeated")();
    else field.value = String(tile.repeat);
  };
  const back = stepped(course, path, -1);
  const on = stepped(course, path, 1);
  const gone = removed(course, path);
  const join = joined(course, path);
  const copy = tile.cell === null ? addedAt(holderOf(path), indexIn(path) + 1, valueOf(tile) as never) : added(course, path, tile.cell);
  return (
    <div class="tile-deeds" role="group" aria-label={say("piece of tile", { tile: calledTile(tile) })}>
      <div class="deeds-head">
        <b>{calledTile(tile)}</b>
        <button type="button" class="plain" onClick={() => chosen.value === keyOf(path) && (chosen.value = null)}>
          {say("piece tile done")}
        </button>
      </div>
      <div class="stepper" role="group" aria-label={say("piece times")}>
        <span>{say("piece times")}</span>
        <button type="button" aria-label={say("piece once less")} disabled={tile.repeat <= 1} onClick={go(repeated(course, path, tile.repeat - 1), "piece tile repeated")}>
          −
        </button>
        <input type="text" inputMode="numeric" size={3} aria-label={say("piece times")} value={String(tile.repeat)} onChange={(event) => times(event.currentTarget)} />
        <button type="button" aria-label={say("piece once more")} onClick={go(repeated(course, path, tile.repeat + 1), "piece tile repeated")}>
          +
        </button>
      </div>
      {tile.outer !== null && tile.inner !== null && (
        <>
          <Advance label={say("piece tile outer")} now={tile.outer} to={(by) => advanced(course, path, (tile.outer ?? 0) + by, tile.inner ?? 0)} />
          <Advance label={say("piece tile inner")} now={tile.inner} to={(by) => advanced(course, path, tile.outer ?? 0, (tile.inner ?? 0) + by)} />
        </>
      )}
      <div class="row">
        <button type="button" aria-label={say("piece tile back")} title={say("piece tile back")} disabled={!back} onClick={go(back, "piece tile moved")}>
          ←
        </button>
        <button type="button" aria-label={say("piece tile on")} title={say("piece tile on")} disabled={!on} onClick={go(on, "piece tile moved")}>
          →
        </button>
        <button type="button" onClick={go(copy, "piece tile added")}>
          {say("piece tile copy")}
        </button>
        {join && (
          <button type="button" onClick={go(join, "piece tile joined")}>
            {say("piece tile join")}
          </button>
        )}
        {isGroup(tile) && (
          <button type="button" onClick={go(laidOut(course, path), "piece tile laid out")}>
            {say("piece tile lay out")}
          </button>
        )}
        <button type="button" class="danger" disabled={!gone} onClick={go(gone, "piece tile removed")}>
          {say("piece tile remove")}
        </button>
      </div>
    </div>
  );
}

/** How many balloons a side of a cell has. */
function Advance({ label, now, to }: { label: string; now: number; to: (by: 1 | -1) => Changed | null }) {
  const [less, more] = [to(-1), to(1)];
  const go = (change: Changed | null) => () => void make(change, toldPlace("piece tile made"));
  return (
    <div class="stepper advance" role="group" aria-label={label}>
      <span>{label}</span>
      <button type="button" aria-label={say("piece one less", { what: label })} disabled={!less} onClick={go(less)}>
        −
      </button>
      <output>{now}</output>
      <button type="button" aria-label={say("piece one more", { what: label })} disabled={!more} onClick={go(more)}>
        +
      </button>
    </div>
  );
}
