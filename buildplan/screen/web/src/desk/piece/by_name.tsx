// What a tap in the picture picks, chosen by its name instead: for keys, and for what lies hidden.
import { signal, useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import type { Paintable } from "../contract";
import { design, piece } from "../state";
import { say } from "../words";
import { controlAt } from "./balloons";
import { aimed, brushed, lit, tapping, type Tapping } from "./choices";
import { SIDES } from "./faces";
import { paintAt, strokeAt } from "./painting";
import { partOf } from "./picking";
import { pickJoint, pickPart, pickSide } from "./placing";

export function ByName({ now }: { now: Exclude<Tapping, { does: "paint" }> }) {
  switch (now.does) {
    case "side":
      return <SideByName without={now.part} />;
    case "across":
    case "between":
      return <PartByName without={now.part} />;
    default:
      return <JointByName />;
  }
}

/** The names of the parts as the file lists them. */
function partNames(without: string): string[] {
  const all = controlAt(design.value?.controls ?? [], ["build", "assembly", "parts"])?.items ?? [];
  const of = (part: (typeof all)[number], key: string): unknown => part.items?.find((item) => item.key === key)?.value;
  return all.filter((part) => Number(of(part, "repeat") ?? 1) === 1).map((part) => String(of(part, "name"))).filter((name) => name !== without);
}

function Names({ names, now, choose }: { names: readonly string[]; now: string; choose: (name: string) => void }) {
  return (
    <select aria-label={say("piece which part")} value={now} onChange={(event) => choose(event.currentTarget.value)}>
      {names.map((name) => (
        <option key={name} value={name}>
          {name}
        </option>
      ))}
    </select>
  );
}

function SideByName({ without }: { without: string }) {
  const names = partNames(without);
  const chosen = useSignal(names.at(-1) ?? "");
  const part = names.includes(chosen.value) ? chosen.value : (names[0] ?? "");
  if (part === "") return null;
  return (
    <span class="by-name" role="group" aria-label={say("piece by name")}>
      <Names names={names} now={part} choose={(name) => (chosen.value = name)} />
      {SIDES.map((side) => {
        const aim = (): void => void (aimed.value = { part, side });
        return (
          <button key={side} type="button" onFocus={aim} onPointerEnter={aim} onClick={() => void pickSide({ part, side })}>
            {say(`piece side ${side}`)}
          </button>
        );
      })}
    </span>
  );
}

function PartByName({ without }: { without: string }) {
  const names = partNames(without);
  const chosen = useSignal(names[0] ?? "");
  if (names.length === 0) return null;
  return (
    <span class="by-name" role="group" aria-label={say("piece by name")}>
      <Names names={names} now={chosen.value} choose={(name) => (chosen.value = name)} />
      <button type="button" onClick={() => void pickPart(chosen.value)}>
        {say("piece take")}
      </button>
    </span>
  );
}

function JointByName() {
  const joints = (piece.value?.value.piece.joints ?? []).map(({ label }) => label);
  const parts = [...new Set(joints.map(partOf))];
  const chosen = useSignal("");
  const part = useSignal(parts[0] ?? "");
  const own = joints.filter((label) => partOf(label) === part.value);
  const joint = own.includes(chosen.value) ? chosen.value : (own[0] ?? "");
  const aim = (label: string): void => {
    chosen.value = label;
    lit.value = [label];
  };
  return (
    <span class="by-name" role="group" aria-label={say("piece by name")}>
      {parts.length > 1 && <Names names={parts} now={part.value} choose={(name) => (part.value = name)} />}
      <select aria-label={say("piece which joint")} value={joint} onFocus={() => aim(joint)} onChange={(event) => aim(event.currentTarget.value)}>
        {own.map((label) => (
          <option key={label} value={label}>
            {label}
          </option>
        ))}
      </select>
      <button type="button" onClick={() => void pickJoint(joint).then(() => (lit.value = []))}>
        {say("piece take")}
      </button>
    </span>
  );
}

/** Whether what is painted is chosen by name. */
const byName = signal(false);

export function BrushByNameButton() {
  return (
    <button type="button" aria-expanded={byName.value} onClick={() => (byName.value = !byName.value)}>
      {say("piece by name")}
    </button>
  );
}

/** The balloons that are painted, chosen by what they are and by their place along it. */
export function BrushByName({ parts }: { parts: readonly Paintable[] }) {
  const which = useSignal(0);
  const place = useSignal(0);
  const part = parts[which.value] ?? parts[0];
  const at = Math.min(place.value, (part?.places.length ?? 1) - 1);
  const link = part?.places[at]?.[0] ?? "";
  const now = tapping.value;
  const scope = now?.does === "paint" ? now.scope : "one";
  useEffect(() => {
    brushed.value = byName.value ? strokeAt(link) : [];
    return () => void (brushed.value = []);
  }, [byName.value, link, scope]);
  if (!part || !byName.value) return null;
  const told = say("piece place of", { place: at + 1, count: part.places.length });
  return (
    <span class="by-name" role="group" aria-label={say("piece by name")}>
      <select aria-label={say("piece which chain")} value={which.value} onChange={(event) => (which.value = Number(event.currentTarget.value))}>
        {parts.map(({ label }, i) => (
          <option key={label} value={i}>
            {label}
          </option>
        ))}
      </select>
      <label class="place">
        <span>{told}</span>
        <input
          type="range"
          min={0}
          max={part.places.length - 1}
          value={at}
          aria-label={say("piece place along")}
          aria-valuetext={told}
          onInput={(event) => (place.value = Number(event.currentTarget.value))}
        />
      </label>
      <button type="button" class="main" onClick={() => void paintAt(link)}>
        {say("piece paint this")}
      </button>
    </span>
  );
}
