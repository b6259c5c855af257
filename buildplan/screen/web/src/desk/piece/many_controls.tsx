// Controls that hold others: groups that fold, lists and mappings with items to add and take out.
import { useSignal } from "@preact/signals";
import { useId } from "preact/hooks";
import { edit } from "../actions";
import type { Control } from "../contract";
import { problems } from "../state";
import { say, sentence } from "../words";
import { tapping } from "./choices";
import { ControlView, Forms, isFixed, LeaveOut, Mistakes } from "./controls";
import { keyOf } from "./paths";
import { canBeLeftOut, hasProblems, isThere, problemsOf } from "./written";

/** Which groups the reader has opened; kept while the page is. */
const opened = new Map<string, boolean>();

interface FoldProps {
  control: Control;
  children: preact.ComponentChildren;
  extra?: preact.ComponentChildren;
  open?: boolean;
}

/** A group under its name, to be opened; `beside` are buttons at the name's end. */
export function Folded({ beside, ...rest }: FoldProps & { beside?: preact.ComponentChildren }) {
  return (
    <div class="folded">
      <Fold {...rest} />
      {beside}
    </div>
  );
}

function Fold({ control, children, extra, open }: FoldProps) {
  const key = control.path.length > 0 ? keyOf(control.path) : control.key;
  const wrong = control.path.length > 0 ? hasProblems(control, problems.value) : (control.items ?? []).some((item) => hasProblems(item, problems.value));
  const is = opened.get(key) ?? (open || wrong);
  return (
    <details class="fold" open={is} onToggle={(event) => opened.set(key, event.currentTarget.open)} data-wrong={wrong}>
      <summary>
        <span><bdi>{control.label}</bdi></span>
        {extra}
        {wrong && <span class="wrong-sign">{say("piece has problems")}</span>}
      </summary>
      {control.help && <small class="help shown">{sentence(control.help)}</small>}
      {children}
    </details>
  );
}

/** What is set comes first; what is not given folds away behind it. */
export function GroupItems({ control }: { control: Control }) {
  const items = control.items ?? [];
  const given = items.filter((item) => isThere(item) || !canBeLeftOut(item));
  const others = items.filter((item) => !isThere(item) && canBeLeftOut(item));
  const key = `${keyOf(control.path)} more`;
  return (
    <>
      {given.map((item) => (
        <ControlView key={item.key} control={item} />
      ))}
      {others.length > 0 && (
        <details class="fold more" open={opened.get(key) ?? false} onToggle={(event) => opened.set(key, event.currentTarget.open)}>
          <summary>{say("piece more of", { what: control.label })}</summary>
          {others.map((item) => (
            <ControlView key={item.key} control={item} />
          ))}
        </details>
      )}
    </>
  );
}

export function GroupControl({ control }: { control: Control }) {
  const found = problemsOf(control, problems.value);
  const absent = !isThere(control) && canBeLeftOut(control);
  return (
    <Folded control={control} beside={<LeaveOut control={control} />}>
      <Mistakes found={found} id={`wrong ${keyOf(control.path)}`} />
      {absent && control.add !== undefined && control.add !== null ? (
        <AddButton label={say("piece add one", { tile: control.label })} onClick={() => void edit([{ op: "put", path: control.path, value: control.add }])} />
      ) : (
        <GroupItems control={control} />
      )}
      <Forms control={control} />
    </Folded>
  );
}

export function AddButton({ label, onClick }: { label: string; onClick: () => void }) {
  if (isFixed()) return null;
  return (
    <button type="button" class="add" onClick={onClick}>
      + {label}
    </button>
  );
}

export function ListControl({ control }: { control: Control }) {
  const items = control.items ?? [];
  const add = (): void => {
    const value = control.add ?? "";
    void edit(isThere(control) ? [{ op: "insert", path: [...control.path, items.length], value }] : [{ op: "put", path: control.path, value: [value] }]);
  };
  const takeOut = (item: Control): void => void edit([{ op: "take_out", path: items.length === 1 && canBeLeftOut(control) ? control.path : item.path }]);
  return (
    <Folded control={control} extra={<span class="count">{items.length || ""}</span>}>
      <Mistakes found={problemsOf(control, problems.value)} id={`wrong ${keyOf(control.path)}`} />
      <ol class="items">
        {items.map((item, i) => (
          <li key={i}>
            <ControlView control={item} />
            {!isFixed() && (
              <span class="item-deeds">
                {i > 0 && (
                  <button type="button" class="plain" aria-label={say("piece item back", { what: item.label })} onClick={() => void edit([{ op: "move", path: item.path, to: i - 1 }])}>
                    ↑
                  </button>
                )}
                <button type="button" class="plain" aria-label={say("piece leave out", { what: item.label })} onClick={() => takeOut(item)}>
                  ×
                </button>
              </span>
            )}
          </li>
        ))}
      </ol>
      {control.more ? <p class="soft">{say("piece more items", { count: control.more })}</p> : null}
      {TIED.includes(control.key) && <TieInPicture control={control} />}
      <AddButton label={say("piece add to", { what: control.label })} onClick={add} />
    </Folded>
  );
}

/** Lists of what is tied between two joints. */
const TIED: readonly (string | number)[] = ["ties", "extra"];

function TieInPicture({ control }: { control: Control }) {
  const now = tapping.value;
  const on = now?.does === "tie" && keyOf(now.to) === keyOf(control.path);
  if (isFixed()) return null;
  return (
    <button type="button" aria-pressed={on} onClick={() => (tapping.value = on ? null : { does: "tie", first: null, to: control.path })}>
      {say("piece tie in picture")}
    </button>
  );
}

export function MapControl({ control }: { control: Control }) {
  const key = useSignal("");
  const id = useId();
  const items = control.items ?? [];
  const full = control.choices?.every(({ value }) => items.some((item) => item.key === value)) === true;
  const takeOut = (item: Control): void => void edit([{ op: "take_out", path: items.length === 1 && canBeLeftOut(control) ? control.path : item.path }]);
  const add = (): void => {
    if (key.value.trim() === "") return;
    void edit([{ op: "put", path: [...control.path, key.value.trim()], value: control.add ?? "" }]);
    key.value = "";
  };
  return (
    <Folded control={control} extra={<span class="count">{items.length || ""}</span>}>
      <Mistakes found={problemsOf(control, problems.value)} id={`wrong ${keyOf(control.path)}`} />
      <ul class="items">
        {items.map((item) => (
          <li key={item.key}>
            <ControlView control={item} />
            {!isFixed() && (
              <button type="button" class="plain" aria-label={say("piece leave out", { what: item.label })} onClick={() => takeOut(item)}>
                ×
              </button>
            )}
          </li>
        ))}
      </ul>
      {!isFixed() && !full && (
        <form
          class="add-key"
          onSubmit={(event) => {
            event.preventDefault();
            add();
          }}
        >
          <label for={id}>{say("piece name of new")}</label>
          <span class="typed">
            {control.choices ? (
              <select id={id} value={key.value} onChange={(event) => (key.value = event.currentTarget.value)}>
                <option value="" />
                {control.choices
                  .filter(({ value }) => !items.some((item) => item.key === value))
                  .map(({ value, label }) => (
                    <option key={value} value={value}>
                      {label}
                    </option>
                  ))}
              </select>
            ) : (
              <input id={id} type="text" value={key.value} onInput={(event) => (key.value = event.currentTarget.value)} />
            )}
            <button type="submit" class="add">
              + {say("piece add to", { what: control.label })}
            </button>
          </span>
        </form>
      )}
    </Folded>
  );
}
