// The parts of an assembly, each with where it is set, by hand in the picture or by its controls.
import { design, facts } from "../state";
import { say } from "../words";
import { controlAt } from "./balloons";
import { tapping, type Tapping } from "./choices";
import { isFixed } from "./controls";
import type { Control } from "../contract";

const PARTS = ["build", "assembly", "parts"];

export function isAssembly(): boolean {
  return controlAt(design.value?.controls ?? [], PARTS) !== undefined;
}

export function Parts() {
  const all = controlAt(design.value?.controls ?? [], PARTS);
  if (!all) return null;
  return (
    <section class="parts" aria-labelledby="parts">
      <h2 id="parts">{say("piece parts")}</h2>
      <p class="soft">{say("piece parts how")}</p>
      <ul>
        {(all.items ?? []).map((part) => (
          <OnePart key={part.path.join(".")} part={part} />
        ))}
      </ul>
      {!isFixed() && facts.value && <TieJoints />}
    </section>
  );
}

function OnePart({ part }: { part: Control }) {
  const of = (key: string): unknown => part.items?.find((item) => item.key === key)?.value;
  const name = String(of("name") ?? part.label);
  const [on, between] = [of("on"), of("between")];
  const where = on
    ? say("piece part is on", { other: [on].flat().join(", ") })
    : Array.isArray(between)
      ? say("piece part is between", { first: String(between[0]), second: String(between[1]) })
      : say("piece part is free");
  const press = (does: "on" | "between"): void => {
    const now = tapping.value;
    const same = now?.does === does && now.part === name;
    const next: Tapping = does === "on" ? { does, part: name, at: part.path } : { does, part: name, at: part.path, first: null };
    tapping.value = same ? null : next;
  };
  const is = (does: "on" | "between"): boolean => tapping.value?.does === does && tapping.value.part === name;
  return (
    <li>
      <b>{name}</b>
      <span class="soft">{where}</span>
      {!isFixed() && (
        <span class="part-deeds">
          <button type="button" aria-pressed={is("on")} aria-label={say("piece set on", { part: name })} onClick={() => press("on")}>
            {say("piece set on short")}
          </button>
          <button type="button" aria-pressed={is("between")} aria-label={say("piece set between", { part: name })} onClick={() => press("between")}>
            {say("piece set between short")}
          </button>
        </span>
      )}
    </li>
  );
}

function TieJoints() {
  const on = tapping.value?.does === "tie";
  return (
    <button type="button" aria-pressed={on} onClick={() => (tapping.value = on ? null : { does: "tie", first: null, to: ["build", "assembly", "ties"] })}>
      {say("piece tie in picture")}
    </button>
  );
}
