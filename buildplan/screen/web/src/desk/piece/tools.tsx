// What stands over the picture: turning it back, drawing near, overlays, and what a tap does.
import { useSignal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { design, facts } from "../state";
import { say } from "../words";
import { ownBalloons } from "./balloons";
import type { Overlays } from "../contract";
import { door, gust, OVERLAYS, overlays, tapping, type Overlay } from "./choices";
import { passes } from "./drawn";
import { SCOPES, type Scope } from "./picking";
import type { View } from "./view";

export function PictureTools({ view, turned }: { view: View; turned: boolean }) {
  return (
    <>
      <div class="near-and-far" role="group" aria-label={say("piece seeing")}>
        <button type="button" aria-label={say("piece nearer")} title={say("piece nearer")} onClick={() => view.stage.turn(0, 0, 1.25)}>
          +
        </button>
        <button type="button" aria-label={say("piece farther")} title={say("piece farther")} onClick={() => view.stage.turn(0, 0, 0.8)}>
          −
        </button>
        {turned && (
          <button type="button" class="worded" onClick={() => view.stage.toTheSeat()}>
            {say("piece to the front")}
          </button>
        )}
      </div>
      <div class="over-tools">
        <Showing />
        <PaintTool />
      </div>
      <Told />
    </>
  );
}

function toggled(overlay: Overlay): void {
  const now = new Set(overlays.value);
  if (!now.delete(overlay)) now.add(overlay);
  overlays.value = now;
}

/** The overlays, each a switch, with what it says when it is on. */
function Showing() {
  const open = useSignal(false);
  const known = facts.value?.value.overlays;
  return (
    <div class="showing">
      <button type="button" aria-expanded={open.value} aria-controls="overlays" onClick={() => (open.value = !open.value)}>
        {say("piece show")}
        {overlays.value.size > 0 && <span class="count">{overlays.value.size}</span>}
      </button>
      {open.value && (
        <div class="panel" id="overlays" role="group" aria-label={say("piece show")}>
          {OVERLAYS.map((one) => (
            <label key={one} class="switch">
              <input type="checkbox" role="switch" checked={overlays.value.has(one)} onChange={() => toggled(one)} />
              <span>{say(`piece show ${one}`)}</span>
            </label>
          ))}
        </div>
      )}
      {known && overlays.value.has("gust") && known.gusts.length > 0 && (
        <Card>
          <label class="slider">
            <span>{say("piece gust")}</span>
            <input
              type="range"
              min={0}
              max={known.gusts.length - 1}
              value={gust.value}
              aria-valuetext={known.gusts[gust.value]?.speed ?? ""}
              onInput={(event) => (gust.value = Number(event.currentTarget.value))}
            />
          </label>
          <output>
            {known.gusts[gust.value]?.words}
          </output>
        </Card>
      )}
      {known && overlays.value.has("door") && <Doors doors={known.doors} />}
      {known && overlays.value.has("van") && (
        <Card>
          <output data-passes={passes(known.van.goes_in)}>{known.van.words}</output>
        </Card>
      )}
    </div>
  );
}

function Card({ children }: { children: ComponentChildren }) {
  return <div class="panel shown-card">{children}</div>;
}

function Doors({ doors }: { doors: Overlays["doors"] }) {
  const now = doors[door.value];
  if (!now) return null;
  return (
    <Card>
      {doors.length > 1 && (
        <select aria-label={say("piece show door")} value={door.value} onChange={(event) => (door.value = Number(event.currentTarget.value))}>
          {doors.map((one, i) => (
            <option key={one.door} value={i}>
              {one.door}
            </option>
          ))}
        </select>
      )}
      <output data-passes={passes(now.goes_through)}>{now.words}</output>
    </Card>
  );
}

/** Painting: which balloon, and how much of the piece a tap paints; or why it cannot be. */
function PaintTool() {
  const now = tapping.value;
  const paint = facts.value?.value.paint;
  const links = ownBalloons(design.value).filter((balloon) => balloon.isLink);
  const [first] = links;
  if (!paint || !first || design.value?.read_only) return null;
  const painting = now?.does === "paint" ? now : null;
  const begin = () => (tapping.value = painting ? null : { does: "paint", balloon: first.key, scope: "one" });
  return (
    <div class="painting">
      <button type="button" aria-pressed={painting !== null} onClick={begin}>
        {say("piece paint")}
      </button>
      {painting && (
        <div class="panel" role="group" aria-label={say("piece paint")}>
          {paint.parts.length > 0 && (
            <>
              <div class="swatches" role="radiogroup" aria-label={say("piece paint with")}>
                {links.map((balloon) => (
                  <label key={balloon.key} class="swatch" title={balloon.label}>
                    <input
                      type="radio"
                      name="paint-with"
                      checked={painting.balloon === balloon.key}
                      onChange={() => (tapping.value = { ...painting, balloon: balloon.key })}
                    />
                    <i style={{ background: balloon.hex }} />
                    <span>{balloon.told}</span>
                  </label>
                ))}
              </div>
              <label class="scope">
                <span>{say("piece paint how much")}</span>
                <select value={painting.scope} onChange={(event) => (tapping.value = { ...painting, scope: event.currentTarget.value as Scope })}>
                  {SCOPES.map((scope) => (
                    <option key={scope} value={scope}>
                      {say(`piece paint ${scope}`)}
                    </option>
                  ))}
                </select>
              </label>
              <p class="how">{say("piece paint how")}</p>
            </>
          )}
          {paint.why !== "" && <p class="how">{paint.why}</p>}
        </div>
      )}
    </div>
  );
}

/** What a tap is waited for. */
function Told() {
  const now = tapping.value;
  if (!now || now.does === "paint") return null;
  const words =
    now.does === "on"
      ? say("piece pick on", { part: now.part })
      : now.does === "between"
        ? say(now.first === null ? "piece pick between" : "piece pick between second", { part: now.part, first: now.first ?? "" })
        : now.does === "tie"
          ? say(now.first === null ? "piece pick tie" : "piece pick tie second", { first: now.first ?? "" })
          : say("piece pick joint");
  return (
    <p class="waiting" role="status">
      <span>{words}</span>
      <button type="button" onClick={() => (tapping.value = null)}>
        {say("piece stop picking")}
      </button>
    </p>
  );
}
