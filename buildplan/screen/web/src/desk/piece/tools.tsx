// What stands before and over the picture: overlays, painting, turning it back, drawing near.
import { useSignal } from "@preact/signals";
import { design, facts } from "../state";
import { say } from "../words";
import { ownBalloons } from "./balloons";
import type { Overlays as Known } from "../contract";
import { door, gust, OVERLAYS, overlays, setPart, SETTINGS, stopTapping, tapping, type Overlay, type Tapping } from "./choices";
import { passes } from "./drawn";
import { SCOPES, type Scope } from "./picking";
import { BrushByName, BrushByNameButton, ByName } from "./by_name";
import type { View } from "./view";

/** Over the picture: drawing near, and turning back. */
export function Seeing({ view, turned }: { view: View; turned: boolean }) {
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
    </>
  );
}

/** Before the picture, so that nothing covers it: what is shown over it, painting, and what a tap is waited for. */
export function PictureBar() {
  const open = useSignal(false);
  const painting = tapping.value?.does === "paint" ? tapping.value : null;
  const show = (): void => {
    open.value = !open.value;
    if (painting) tapping.value = null;
  };
  return (
    <div class="picture-bar">
      <div class="bar-row">
        <button type="button" aria-expanded={open.value && !painting} aria-controls="overlays" onClick={show}>
          {say("piece show")}
          {overlays.value.size > 0 && <span class="count">{overlays.value.size}</span>}
        </button>
        <PaintButton painting={painting !== null} />
        {open.value && !painting && <Overlays />}
        {painting && <Painting now={painting} />}
      </div>
      {painting && <BrushByName parts={facts.value?.value.paint?.parts ?? []} />}
      <Shown />
      <Told />
    </div>
  );
}

function toggled(overlay: Overlay): void {
  const now = new Set(overlays.value);
  if (!now.delete(overlay)) now.add(overlay);
  overlays.value = now;
}

/** The overlays, each shown or not. */
function Overlays() {
  return (
    <div class="chosen" id="overlays" role="group" aria-label={say("piece show")}>
      {OVERLAYS.map((one) => (
        <button key={one} type="button" class="chip-button" aria-pressed={overlays.value.has(one)} onClick={() => toggled(one)}>
          {say(`piece show ${one}`)}
        </button>
      ))}
    </div>
  );
}

/** What the overlays that are shown say. */
function Shown() {
  const known = facts.value?.value.overlays;
  const on = overlays.value;
  if (!known || !(on.has("gust") || on.has("door") || on.has("van"))) return null;
  return (
    <div class="shown-cards">
      {on.has("gust") && known.gusts.length > 0 && (
        <div class="shown-card">
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
          <output>{known.gusts[gust.value]?.words}</output>
        </div>
      )}
      {on.has("door") && <Doors doors={known.doors} />}
      {on.has("van") && (
        <div class="shown-card">
          <b>{say("piece show van")}</b> <span class="soft">{known.van.door}</span>
          <output data-passes={passes(known.van.goes_in)}>{known.van.words}</output>
        </div>
      )}
    </div>
  );
}

function Doors({ doors }: { doors: Known["doors"] }) {
  const now = doors[door.value];
  if (!now) return null;
  return (
    <div class="shown-card">
      <select aria-label={say("piece show door")} value={door.value} onChange={(event) => (door.value = Number(event.currentTarget.value))}>
        {doors.map((one, i) => (
          <option key={one.door} value={i}>
            {one.door}
          </option>
        ))}
      </select>
      <output data-passes={passes(now.goes_through)}>{now.words}</output>
    </div>
  );
}

const toPaint = () => ownBalloons(design.value).filter((balloon) => balloon.isLink);

function PaintButton({ painting }: { painting: boolean }) {
  const [first] = toPaint();
  if (!facts.value?.value.paint || !first || design.value?.read_only) return null;
  return (
    <button type="button" aria-pressed={painting} onClick={() => (tapping.value = painting ? null : { does: "paint", balloon: first.key, scope: "one" })}>
      {say("piece paint")}
    </button>
  );
}

/** Which balloon a tap paints with, and how much of the piece; or why it cannot be. */
function Painting({ now }: { now: Extract<Tapping, { does: "paint" }> }) {
  const paint = facts.value?.value.paint;
  if (!paint) return null;
  return (
    <div class="chosen" role="group" aria-label={say("piece paint")}>
      {paint.parts.length > 0 && (
        <>
          <div class="swatches" role="radiogroup" aria-label={say("piece paint with")}>
            {toPaint().map((balloon) => (
              <label key={balloon.key} class="swatch" title={balloon.told}>
                <input type="radio" name="paint-with" checked={now.balloon === balloon.key} onChange={() => (tapping.value = { ...now, balloon: balloon.key })} />
                <i style={{ background: balloon.hex }} />
                <span><bdi>{balloon.told}</bdi></span>
              </label>
            ))}
          </div>
          <label class="scope">
            <span>{say("piece paint how much")}</span>
            <select value={now.scope} onChange={(event) => (tapping.value = { ...now, scope: event.currentTarget.value as Scope })}>
              {SCOPES.map((scope) => (
                <option key={scope} value={scope}>
                  {say(`piece paint ${scope}`)}
                </option>
              ))}
            </select>
          </label>
          <BrushByNameButton />
        </>
      )}
      {paint.why !== "" && <p class="how">{paint.why}</p>}
    </div>
  );
}

/** What a tap is waited for, and the same to be chosen by name. */
export function Told() {
  const now = tapping.value;
  if (!now || now.does === "paint") return null;
  return (
    <div class="waiting">
      {"part" in now && (
        <span class="settings" role="group" aria-label={say("piece set", { part: now.part })}>
          {SETTINGS.map((does) => (
            <button key={does} type="button" class="chip-button" aria-pressed={now.does === does} onClick={() => setPart(now.part, now.at, does)}>
              {say(`piece set ${does}`)}
            </button>
          ))}
        </span>
      )}
      <button type="button" onClick={stopTapping}>
        {say("piece stop picking")}
      </button>
      <p role="status">{waitsFor(now)}</p>
      <ByName now={now} />
    </div>
  );
}

function waitsFor(now: Exclude<Tapping, { does: "paint" }>): string {
  switch (now.does) {
    case "side":
      return say("piece pick side", { part: now.part });
    case "across":
    case "between":
      return say(now.first === null ? `piece pick ${now.does}` : `piece pick ${now.does} second`, { part: now.part, first: now.first ?? "" });
    case "tie":
      return say(now.first === null ? "piece pick tie" : "piece pick tie second", { first: now.first ?? "" });
    case "joint":
      return say("piece pick joint");
  }
}
