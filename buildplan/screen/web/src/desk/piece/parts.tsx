// The parts of an assembly, each with where it is set, by hand in the picture or by its controls.
import { useSignal } from "@preact/signals";
import { edit } from "../actions";
import { made } from "./made";
import type { Control } from "../contract";
import { design, facts, problems } from "../state";
import { say } from "../words";
import { controlAt } from "./balloons";
import { setPart, stopTapping, tapping } from "./choices";
import { isFixed, Mistakes } from "./controls";
import { SIDES } from "./faces";
import { Folded, GroupItems } from "./many_controls";
import { OtherDesigns } from "./other_designs";
import { problemsOf } from "./written";

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
      <Mistakes found={problemsOf(all, problems.value)} id="wrong-parts" />
      <ul>
        {(all.items ?? []).map((part, i, { length }) => (
          <OnePart key={part.path.join(".")} part={part} alone={length === 1} place={i} />
        ))}
      </ul>
      <MorePart all={all} />
      {!isFixed() && facts.value && <TieJoints />}
    </section>
  );
}

/** One more part: what it is to be is chosen; where it goes is picked afterwards. */
function MorePart({ all }: { all: Control }) {
  const open = useSignal(false);
  if (isFixed()) return null;
  const add = async (value: unknown): Promise<void> => {
    open.value = false;
    const path = [...all.path, all.items?.length ?? 0];
    if (await made([{ op: "insert", path, value }])) setPart((value as { name: string }).name, path, "side");
  };
  return (
    <div class="more-part">
      <button type="button" class="add" aria-expanded={open.value} onClick={() => (open.value = !open.value)}>
        + {say("piece one more part")}
      </button>
      {open.value && (
        <div class="panel-in forms">
          {(all.adds ?? []).map(({ label, value }) => (
            <button key={label} type="button" onClick={() => void add(value)}>
              {label}
            </button>
          ))}
          <OtherDesigns choose={(value) => void add(value)} name={all.adds?.[0]?.value} />
        </div>
      )}
    </div>
  );
}

/** Where a part is set, by what its keys say. */
function whereIs(of: (key: string) => unknown): string {
  const between = of("between");
  if (Array.isArray(between)) return say("piece part is between", { first: String(between[0]), second: String(between[1]) });
  const side = SIDES.find((key) => of(key));
  return side ? say(`piece part is ${side}`, { other: [of(side)].flat().join(", ") }) : say("piece part is free");
}

function OnePart({ part, alone, place }: { part: Control; alone: boolean; place: number }) {
  const of = (key: string): unknown => part.items?.find((item) => item.key === key)?.value;
  const name = String(of("name") ?? part.label);
  const made = part.items?.find((item) => item.key === "build")?.items?.[0]?.label ?? String(of("design") ?? "");
  const now = tapping.value;
  const isSet = now !== null && "part" in now && now.part === name;
  return (
    <li>
      <Folded control={{ ...part, label: name, help: "" }} extra={<span class="kind">{[made, whereIs(of)].filter(Boolean).join(", ")}</span>}>
        <Mistakes found={problemsOf(part, problems.value)} id={`wrong ${name}`} />
        <GroupItems control={part} />
        {!alone && !isFixed() && (
          <p class="part-deeds">
            {place > 0 && (
              <button type="button" onClick={() => void edit([{ op: "move", path: part.path, to: place - 1 }])}>
                {say("piece part earlier")}
              </button>
            )}
            <button type="button" class="danger" onClick={() => void edit([{ op: "take_out", path: part.path }])}>
              {say("piece balloon remove", { balloon: name })}
            </button>
          </p>
        )}
      </Folded>
      {!isFixed() && (
        <span class="part-deeds">
          <button type="button" aria-pressed={isSet} aria-label={say("piece set", { part: name })} onClick={() => (isSet ? stopTapping() : setPart(name, part.path, "side"))}>
            {say("piece set short")}
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
