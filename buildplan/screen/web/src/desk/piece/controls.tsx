// A control for every key of the file, made from the tree that the server tells.
import { useSignal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";
import { edit } from "../actions";
import { made } from "./made";
import type { Control, Problem } from "../contract";
import { design, problems } from "../state";
import { say, sentence } from "../words";
import { tapping, tell } from "./choices";
import { ColourControl } from "./colours";
import { CourseOfTube } from "./course";
import { GroupControl, ListControl, MapControl } from "./many_controls";
import { SIDES } from "./faces";
import { isUnder, keyOf } from "./paths";
import { courses } from "./meant";
import { listOf } from "./tiles";
import { canBeLeftOut, editsFor, isThere, problemsOf } from "./written";

/** Keys whose values are names of parts, and no joints: those are set by "Set it ...". */
const NAMES_PARTS: readonly string[] = [...SIDES, "between", "name"];

export const isFixed = (): boolean => design.value?.read_only === true;

export function ControlView({ control }: { control: Control }) {
  switch (control.kind) {
    case "group":
      return <GroupControl control={control} />;
    case "map":
      return <MapControl control={control} />;
    case "list":
      return <ListControl control={control} />;
    case "flag":
      return <FlagControl control={control} />;
    case "choice":
      return <ChoiceControl control={control} />;
    case "colour":
      return <ColourControl control={control} />;
    case "cells":
      return <CellsControl control={control} />;
    default:
      return <TextControl control={control} />;
  }
}

/** What is wrong, in one sentence each, at its place. */
export function Mistakes({ found, id }: { found: readonly Problem[]; id: string }) {
  if (found.length === 0) return null;
  return (
    <div class="mistakes" id={id}>
      {found.map((problem) => (
        <p key={problem.number}>
          {sentence(problem.message)}
          {!isFixed() &&
            problem.suggestion?.ways.map(({ way, words }) => (
              <button key={way} type="button" onClick={() => void mend(problem, way, words)}>
                {words}
              </button>
            ))}
        </p>
      ))}
    </div>
  );
}

/** Do what a problem suggests. */
export async function mend(problem: Problem, way: number, words: string): Promise<void> {
  if (await made([{ op: "suggestion", number: problem.number, way }])) tell(say("piece mended", { what: words }));
}

interface FieldProps {
  control: Control;
  children: (ids: { id: string; about: string; wrong: boolean }) => ComponentChildren;
}

/** A control with its name before it, what it is for, and what is wrong. */
export function Field({ control, children }: FieldProps) {
  const id = useId();
  const found = problemsOf(control, problems.value);
  const wrong = found.length > 0;
  const about = [control.help && `${id}-help`, wrong && `${id}-wrong`].filter(Boolean).join(" ");
  return (
    <div class="field" data-kind={control.kind} data-wrong={wrong}>
      <label for={id} title={control.help}>
        <bdi>{control.label}</bdi>
      </label>
      {children({ id, about, wrong })}
      {control.help && (
        <small id={`${id}-help`} class="help">
          {sentence(control.help)}
        </small>
      )}
      <Forms control={control} />
      <Mistakes found={found} id={`${id}-wrong`} />
    </div>
  );
}

/** The other forms that a value can have, each a button. */
export function Forms({ control }: { control: Control }) {
  if (!control.forms || isFixed()) return null;
  return (
    <div class="forms">
      {control.forms.map(({ label, value }) => (
        <button key={label} type="button" class="plain" onClick={() => void edit([{ op: "put", path: control.path, value }])}>
          {label}
        </button>
      ))}
    </div>
  );
}

async function write(control: Control, text: string): Promise<boolean> {
  const edits = editsFor(control, text);
  return edits.length === 0 || made(edits);
}

function TextControl({ control }: { control: Control }) {
  const draft = useSignal<string | null>(null);
  const isNumber = control.kind === "number" || control.kind === "whole" || control.kind === "size";
  const done = async (text: string): Promise<void> => {
    if (text === control.text) draft.value = null;
    else if (await write(control, text)) draft.value = null;
  };
  const step = (by: number): void => void write(control, String(Number(control.value ?? control.default ?? 0) + by));
  const value = Number(control.value ?? control.default);
  return (
    <Field control={control}>
      {({ id, about, wrong }) => (
        <div class="typed">
          {control.kind === "whole" && (
            <button type="button" aria-label={say("piece one less", { what: control.label })} disabled={isFixed() || !(value > (control.low ?? -Infinity))} onClick={() => step(-1)}>
              −
            </button>
          )}
          <input
            id={id}
            type="text"
            inputMode={isNumber && control.kind !== "size" ? "decimal" : undefined}
            size={isNumber ? 7 : undefined}
            value={draft.value ?? control.text}
            placeholder={!isThere(control) && control.default !== null && control.default !== undefined ? String(control.default) : undefined}
            aria-describedby={about || undefined}
            aria-invalid={wrong}
            readOnly={isFixed()}
            onInput={(event) => (draft.value = event.currentTarget.value)}
            onChange={(event) => void done(event.currentTarget.value)}
          />
          {control.unit && <span class="unit">{control.unit}</span>}
          {control.kind === "whole" && (
            <button type="button" aria-label={say("piece one more", { what: control.label })} disabled={isFixed() || !(value < (control.high ?? Infinity))} onClick={() => step(1)}>
              +
            </button>
          )}
          {control.kind === "joints" && !NAMES_PARTS.includes(control.key) && !isFixed() && <PickJoints control={control} />}
          <LeaveOut control={control} />
        </div>
      )}
    </Field>
  );
}

/** Joints are picked in the picture too. */
function PickJoints({ control }: { control: Control }) {
  const now = tapping.value;
  const on = now?.does === "joint" && keyOf(now.into) === keyOf(control.path);
  return (
    <button
      type="button"
      aria-pressed={on}
      aria-label={say("piece pick in picture", { what: control.label })}
      title={say("piece pick in picture", { what: control.label })}
      onClick={() => (tapping.value = on ? null : { does: "joint", into: control.path })}
    >
      {say("piece pick")}
    </button>
  );
}

/** What need not be given is taken out again. */
export function LeaveOut({ control }: { control: Control }) {
  if (!canBeLeftOut(control) || !isThere(control) || isFixed()) return null;
  const name = say("piece leave out", { what: control.label });
  return (
    <button type="button" class="plain leave-out" aria-label={name} title={name} onClick={() => void edit([{ op: "take_out", path: control.path }])}>
      ×
    </button>
  );
}

function FlagControl({ control }: { control: Control }) {
  return (
    <Field control={control}>
      {({ id, about }) => (
        <div class="typed">
          <input
            id={id}
            type="checkbox"
            role="switch"
            checked={(control.value ?? control.default) === true}
            aria-describedby={about || undefined}
            disabled={isFixed()}
            onChange={(event) => void edit([{ op: "put", path: control.path, value: event.currentTarget.checked }])}
          />
          <LeaveOut control={control} />
        </div>
      )}
    </Field>
  );
}

function ChoiceControl({ control }: { control: Control }) {
  const choices = control.choices ?? [];
  const chosen = isThere(control) ? String(control.value) : "";
  const strange = chosen !== "" && !choices.some(({ value }) => String(value) === chosen);
  const choose = (value: string): void => {
    const choice = choices.find((each) => String(each.value) === value);
    if (choice) void edit([{ op: "put", path: control.path, value: choice.value }]);
    else if (canBeLeftOut(control)) void edit([{ op: "take_out", path: control.path }]);
  };
  const usual = choices.find(({ value }) => value === control.default)?.label;
  return (
    <Field control={control}>
      {({ id, about, wrong }) => (
        <select id={id} value={chosen} aria-describedby={about || undefined} aria-invalid={wrong} disabled={isFixed()} onChange={(event) => choose(event.currentTarget.value)}>
          {(canBeLeftOut(control) || chosen === "") && <option value="">{usual ? say("piece usual", { what: usual }) : say("piece not given")}</option>}
          {strange && <option value={chosen}>{control.text}</option>}
          {choices.map(({ value, label }) => (
            <option key={String(value)} value={String(value)}>
              {label}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}

/** The course of a tube, as its strip. */
function CellsControl({ control }: { control: Control }) {
  const found = problemsOf(control, problems.value);
  const own = courses().find((course) => isUnder(listOf(course), control.path));
  return (
    <div class="field" data-kind="cells">
      <b class="label">{control.label}</b>
      {own ? <CourseOfTube course={own} offers={design.value?.course === own} /> : <TextControl control={{ ...control, kind: "text" }} />}
      <Mistakes found={found} id={`course-${keyOf(control.path)}`} />
    </div>
  );
}
