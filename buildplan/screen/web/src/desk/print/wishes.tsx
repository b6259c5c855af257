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

/** How many of each design, by its name; none of those that are not in it. */
export type Counts = Readonly<Record<string, number>>;
interface BesideProps {
  own: Choice;
  others: readonly Choice[];
  counts: Counts;
  count: (counts: Counts) => void;
}

const MOST = 999;

/** How many of this design, and of the others of the folder that are priced or bought for with it. */
export function Beside({ own, others, counts, count }: BesideProps) {
  const put = (name: string, number: number): void => {
    const { [name]: _, ...rest } = counts;
    count(number > 0 ? { ...rest, [name]: number } : rest);
  };
  const many = ({ value, label }: Choice) => (
    <input
      type="number"
      min={1}
      max={MOST}
      step={1}
      value={counts[value] ?? 1}
      aria-label={`${say("how many")}: ${label}`}
      onChange={(event) => put(value, Math.min(MOST, Math.max(1, Math.round(event.currentTarget.valueAsNumber) || 1)))}
    />
  );
  return (
    <fieldset class="beside">
      <legend>{say("how many")}</legend>
      <div class="ticks">
        <div>
          <bdi>{own.label}</bdi>
          {many(own)}
        </div>
      </div>
      {others.length > 0 && (
        <div role="group" aria-label={say("beside")}>
          <b>{say("beside")}</b>
          <div class="ticks">
            {others.map((one) => (
              <div key={one.value}>
                <label>
                  <input type="checkbox" checked={one.value in counts} onChange={(event) => put(one.value, event.currentTarget.checked ? 1 : 0)} />
                  <bdi>{one.label}</bdi>
                </label>
                {one.value in counts && many(one)}
              </div>
            ))}
          </div>
        </div>
      )}
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
