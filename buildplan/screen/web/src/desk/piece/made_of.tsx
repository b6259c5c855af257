// What the piece is made of: its pattern and balloons first, then all that can be said besides.
import type { Control } from "../contract";
import { design } from "../state";
import { say } from "../words";
import { BalloonList } from "./balloon_list";
import { ControlView } from "./controls";
import { Folded } from "./many_controls";
import { isAssembly, Parts } from "./parts";

/** What is said besides, by what it is about; what is in none comes last. */
const BESIDES: readonly (readonly [string, readonly string[]])[] = [
  ["stands", ["stand_on", "top", "base", "pole", "hung", "tied_to_wall"]],
  ["money", ["currency", "prices", "pack_sizes", "pack_prices", "spare", "rates"]],
  ["work", ["crew", "labour", "text"]],
  ["words", ["brand", "translations", "constants"]],
];
const ELSEWHERE: readonly string[] = ["buildplan", "build", "balloons", "name", "units", "colour_pattern"];

export function MadeOf() {
  const controls = design.value?.controls ?? [];
  if (controls.length === 0) return <p class="soft">{say("piece in the file")}</p>;
  const of = (...keys: readonly string[]): Control[] => keys.flatMap((key) => controls.find((each) => each.key === key) ?? []);
  const named = [...ELSEWHERE, ...BESIDES.flatMap(([, keys]) => keys)];
  const others = controls.filter(({ key }) => !named.includes(key));
  return (
    <>
      <Parts />
      {of("build")
        .flatMap(({ items }) => items ?? [])
        .map((pattern) => (
          <section key={pattern.key} class="pattern" aria-label={pattern.label}>
            <h2>{pattern.label}</h2>
            {inOrder(pattern).map((item) => (
              <ControlView key={item.key} control={item} />
            ))}
          </section>
        ))}
      <BalloonList />
      {of("colour_pattern").map((item) => (
        <ControlView key={item.key} control={item} />
      ))}
      <section class="others" aria-labelledby="others">
        <h2 id="others">{say("piece others")}</h2>
        {of("name", "units").map((item) => (
          <ControlView key={item.key} control={item} />
        ))}
        {BESIDES.map(([about, keys]) => (
          <Besides key={about} label={say(`piece others ${about}`)} about={about} items={of(...keys)} />
        ))}
        {others.map((item) => (
          <ControlView key={item.key} control={item} />
        ))}
      </section>
    </>
  );
}

/** The course is what a tube is designed by; the parts of an assembly have their own place. */
function inOrder({ key, items = [] }: Control): readonly Control[] {
  const shown = key === "assembly" && isAssembly() ? items.filter((item) => item.key !== "parts") : items;
  return [...shown].sort((one, other) => Number(other.kind === "cells") - Number(one.kind === "cells"));
}

function Besides({ label, about, items }: { label: string; about: string; items: readonly Control[] }) {
  const control: Control = { path: [], key: `besides ${about}`, label, help: "", kind: "group", value: {}, text: "", default: null, items };
  return (
    <Folded control={control}>
      {items.map((item) => (
        <ControlView key={item.key} control={item} />
      ))}
    </Folded>
  );
}
