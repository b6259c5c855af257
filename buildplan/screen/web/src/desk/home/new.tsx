// A new design: from a pattern, an outline, a picture or words.
import { signal } from "@preact/signals";
import { useEffect, useState } from "preact/hooks";
import { getBeginnings } from "../api";
import { tellError } from "../actions";
import type { Beginning } from "../contract";
import { Sign } from "../sign";
import { drawn } from "../state";
import { say } from "../words";
import { Make } from "./make";
import { Making } from "./making";
import { OutlineWay, PatternWay, PictureWay, WordsWay } from "./ways";
import type { Stroke } from "./outline";

export const WAYS = ["pattern", "outline", "picture", "letters"] as const;
export type Way = (typeof WAYS)[number];
const SIGNS = { pattern: "piece", outline: "draw", picture: "picture", letters: "letters" } as const;

/** A picture that was dropped on the page. */
export const dropped = signal<File | null>(null);

/** All that was chosen so far; changing the way loses nothing of it. */
export interface Chosen {
  name: string;
  begun: Beginning | null;
  strokes: readonly Stroke[];
  named: Beginning | null; // an outline that has a name
  picture: File | null;
  text: string;
  height: string;
}

const NOTHING: Chosen = { name: "", begun: null, strokes: [], named: null, picture: null, text: "", height: "" };

export function NewPage() {
  const [way, setWay] = useState<Way>(dropped.value ? "picture" : "pattern");
  const [chosen, setChosen] = useState<Chosen>({ ...NOTHING, picture: dropped.value });
  const [beginnings, setBeginnings] = useState<readonly Beginning[]>([]);
  const [job, setJob] = useState<string | null>(null);
  useEffect(() => void getBeginnings().then(setBeginnings, tellError), [drawn.value]);
  useEffect(() => {
    if (!dropped.value) return;
    setWay("picture");
    setChosen((was) => ({ ...was, picture: dropped.value }));
    dropped.value = null;
  }, [dropped.value]);
  const change = (part: Partial<Chosen>): void => setChosen((was) => ({ ...was, ...part }));
  if (job !== null) return <Making job={job} stopped={() => setJob(null)} />;
  return (
    <main id="main" class="new">
      <h1>{say("new design")}</h1>
      <fieldset class="ways">
        <legend class="hidden">{say("begin with")}</legend>
        {WAYS.map((one) => (
          <label key={one} class="way">
            <input type="radio" name="way" checked={one === way} onChange={() => setWay(one)} />
            <Sign name={SIGNS[one]} />
            <span>{say(`way ${one}`)}</span>
          </label>
        ))}
      </fieldset>
      <Panel way={way} chosen={chosen} change={change} beginnings={beginnings} />
      <Make way={way} chosen={chosen} change={change} begun={setJob} />
    </main>
  );
}

export interface WayProps {
  chosen: Chosen;
  change: (part: Partial<Chosen>) => void;
  beginnings: readonly Beginning[];
}

function Panel({ way, ...rest }: WayProps & { way: Way }) {
  switch (way) {
    case "pattern":
      return <PatternWay {...rest} />;
    case "outline":
      return <OutlineWay {...rest} />;
    case "picture":
      return <PictureWay {...rest} />;
    case "letters":
      return <WordsWay {...rest} />;
  }
}
