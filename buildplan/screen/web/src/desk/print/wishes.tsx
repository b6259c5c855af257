// What can be asked for beside: how pages are laid, doors, buyers, the terms of a quote.
import { useId } from "preact/hooks";
import type { Choice } from "../contract";
import { say } from "../words";

type Kind = "flag" | "line" | "lines" | "whole" | "secret";
interface Wish {
  key: string;
  kind: Kind;
  most?: number;
  how?: string; // what is said of how it is written
}

export const WISHES: readonly Wish[] = [
  { key: "password", kind: "secret", how: "password how" },
  { key: "link", kind: "line", how: "link how" },
  { key: "fold", kind: "flag", how: "fold how" },
  { key: "large", kind: "flag" },
  { key: "doors", kind: "lines", how: "doors how" },
  { key: "buyers", kind: "lines", how: "buyers how" },
  { key: "customer", kind: "line" },
  { key: "address", kind: "lines" },
  { key: "sender", kind: "lines" },
  { key: "number", kind: "line" },
  { key: "date", kind: "line" },
  { key: "deposit", kind: "whole", most: 100 },
  { key: "valid", kind: "whole", most: 999 },
];

export type Wished = Readonly<Record<string, string | number | boolean>>;
type Take = (key: string, value: string | number | boolean) => void;

export function Wishes({ wished, now, wish }: { wished: readonly Wish[]; now: Wished; wish: Take }) {
  if (wished.length === 0) return null;
  return (
    <div class="wishes">
      {wished.map((one) => (
        <OneWish key={one.key} one={one} now={now[one.key]} wish={wish} />
      ))}
    </div>
  );
}

interface BesideProps {
  others: readonly Choice[];
  ticked: readonly string[];
  tick: (names: readonly string[]) => void;
}

/** The other designs of the folder: those that are ticked are priced or bought for at once with this. */
export function Beside({ others, ticked, tick }: BesideProps) {
  if (others.length === 0) return null;
  return (
    <fieldset class="beside">
      <legend>{say("beside")}</legend>
      <div class="ticks">
        {others.map(({ value, label }) => (
          <label key={value}>
            <input type="checkbox" checked={ticked.includes(value)} onChange={(event) => tick(event.currentTarget.checked ? [...ticked, value] : ticked.filter((one) => one !== value))} />
            <span>{label}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}

function OneWish({ one, now, wish }: { one: Wish; now: Wished[string] | undefined; wish: Take }) {
  const id = useId();
  const { key, kind } = one;
  const about = one.how ? `${id}-how` : undefined;
  return (
    <div class="field" data-kind={kind}>
      <label for={id}>{say(key)}</label>
      <Written id={id} about={about} one={one} now={now} wish={wish} />
      {one.how && <small id={about}>{say(one.how)}</small>}
      {key === "buyers" && <FromTable take={(text) => wish(key, text)} />}
    </div>
  );
}

interface WrittenProps {
  id: string;
  about: string | undefined;
  one: Wish;
  now: Wished[string] | undefined;
  wish: Take;
}

function Written({ id, about, one: { key, kind, most }, now, wish }: WrittenProps) {
  const text = now === undefined ? "" : String(now);
  switch (kind) {
    case "flag":
      return <input id={id} type="checkbox" checked={now === true} aria-describedby={about} onChange={(event) => wish(key, event.currentTarget.checked)} />;
    case "lines":
      return <textarea id={id} rows={3} value={text} aria-describedby={about} onInput={(event) => wish(key, event.currentTarget.value)} />;
    case "whole":
      return <input id={id} type="number" min={0} max={most} step={1} value={text} onInput={(event) => wish(key, event.currentTarget.valueAsNumber || 0)} />;
    case "secret":
      return <input id={id} type="password" autocomplete="off" value={text} aria-describedby={about} onInput={(event) => wish(key, event.currentTarget.value)} />;
    case "line":
      return <input id={id} type="text" value={text} aria-describedby={about} onInput={(event) => wish(key, event.currentTarget.value)} />;
  }
}

/** A table of buyers from a file of the reader's own: it is read here and sent with the rest. */
function FromTable({ take }: { take: (text: string) => void }) {
  const id = useId();
  const read = async (file: File | undefined): Promise<void> => {
    if (file) take(await file.text());
  };
  return (
    <label class="from-table" for={id}>
      <span>{say("buyers file")}</span>
      <input id={id} type="file" accept=".csv,text/csv" onChange={(event) => void read(event.currentTarget.files?.[0])} />
    </label>
  );
}
