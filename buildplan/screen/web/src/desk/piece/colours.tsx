// A colour by its name, or mixed by eye: the file's own first.
import { useSignal } from "@preact/signals";
import { made } from "./made";
import type { Control, Design, Edit } from "../contract";
import { design } from "../state";
import { say } from "../words";
import { controlAt, ownBalloons } from "./balloons";
import { tell } from "./choices";
import { Field, isFixed } from "./controls";

export function ColourControl({ control }: { control: Control }) {
  const open = useSignal(false);
  const choose = async (value: string, name: string): Promise<void> => {
    if (await made([{ op: "put", path: control.path, value }, ...renamed(control, name)])) tell(say("piece colour now", { colour: name }));
  };
  return (
    <Field control={control}>
      {({ id, about, wrong }) => (
        <div class="colour-of">
          <button
            id={id}
            type="button"
            class="swatch-button"
            aria-expanded={open.value}
            aria-describedby={about || undefined}
            aria-invalid={wrong}
            disabled={isFixed()}
            onClick={() => (open.value = !open.value)}
          >
            <i style={{ background: control.hex ?? "transparent" }} />
            <span>{control.text || say("piece not given")}</span>
          </button>
          {open.value && <Palette now={control.hex ?? ""} choose={(value, name) => void choose(value, name)} />}
        </div>
      )}
    </Field>
  );
}

/** A balloon that is called by its colour's name is called by that of the new one. */
function renamed(control: Control, name: string): readonly Edit[] {
  const path = [...control.path.slice(0, -1), "label"];
  const label = control.path[0] === "balloons" ? controlAt(design.value?.controls ?? [], path)?.text : undefined;
  const names = [control.text, ...(design.value?.palette ?? []).map((one) => one.name)].map((each) => each.toLowerCase());
  const isColour = label !== undefined && names.includes(label.toLowerCase());
  return isColour && !name.startsWith("#") ? [{ op: "put", path, value: name }] : [];
}

/** Colours to choose from: those of the file's own balloons, those with a name, and any other. */
export function Palette({ now, choose }: { now: string; choose: (value: string, name: string) => void }) {
  const search = useSignal("");
  const found: Design["palette"] = design.value?.palette ?? [];
  const own = [...new Map(ownBalloons(design.value).map((one) => [one.hex.toLowerCase(), one])).values()];
  const wanted = search.value.trim().toLowerCase();
  const named = found.filter(({ name }) => name.toLowerCase().includes(wanted));
  return (
    <div class="palette" role="group" aria-label={say("piece colours")}>
      <div class="chips" role="group" aria-label={say("piece own colours")}>
        {own.map((one) => (
          <Chip key={one.key} hex={one.hex} name={one.label} now={now} choose={() => choose(valueOf(one), one.label)} />
        ))}
      </div>
      <label class="search">
        <span class="hidden">{say("piece find colour")}</span>
        <input type="text" placeholder={say("piece find colour")} value={search.value} onInput={(event) => (search.value = event.currentTarget.value)} />
      </label>
      <div class="chips many" role="group" aria-label={say("piece named colours")}>
        {named.map((one) => (
          <Chip key={one.value} hex={one.hex} name={one.name} now={now} choose={() => choose(one.value, one.name)} />
        ))}
      </div>
      <label class="any">
        <span>{say("piece any colour")}</span>
        <input type="color" value={/^#[0-9a-f]{6}$/i.test(now) ? now.toLowerCase() : "#888888"} onChange={(event) => choose(event.currentTarget.value.toUpperCase(), event.currentTarget.value)} />
      </label>
    </div>
  );
}

/** What the file says of a balloon's colour. */
function valueOf(one: ReturnType<typeof ownBalloons>[number]): string {
  return String(one.control.items?.find(({ key }) => key === "colour")?.value ?? one.hex);
}

function Chip({ hex, name, now, choose }: { hex: string; name: string; now: string; choose: () => void }) {
  return (
    <button type="button" class="chip" aria-label={name} title={name} aria-pressed={hex.toLowerCase() === now.toLowerCase()} onClick={choose}>
      <i style={{ background: hex }} />
    </button>
  );
}
