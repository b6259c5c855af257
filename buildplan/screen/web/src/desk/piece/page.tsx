// The piece itself: its shape in the middle, what it is made of beside it, and what it comes to.
import { useEffect } from "preact/hooks";
import type { Control } from "../contract";
import { design, problems } from "../state";
import { say } from "../words";
import { BalloonList } from "./balloon_list";
import { forget, sheet, SHEETS, told } from "./choices";
import { ControlView } from "./controls";
import { Figures, InShort, Problems } from "./figures";
import { Parts } from "./parts";
import { Picture } from "./picture";
import { OrderOfWork } from "./work";

export function PiecePage({ name }: { name: string }) {
  useEffect(() => forget, [name]);
  const now = sheet.value;
  return (
    <main class="piece" id="main" data-sheet={now}>
      <div class="middle">
        <Picture name={name} />
        <InShort />
        <SheetTabs />
      </div>
      <div class="made" id="sheet-made">
        <MadeOf />
      </div>
      <div class="comes-to" id="sheet-figures">
        <Problems />
        <Figures />
      </div>
      <div class="order" id="sheet-work">
        <OrderOfWork />
      </div>
      <div class="hidden" role="status" aria-live="polite">
        {told.value}
      </div>
    </main>
  );
}

/** On a narrow page one of the sheets is seen below the piece. */
function SheetTabs() {
  return (
    <div class="sheet-tabs" role="group" aria-label={say("piece sheets")}>
      {SHEETS.map((one) => (
        <button key={one} type="button" aria-pressed={sheet.value === one} aria-controls={`sheet-${one}`} onClick={() => (sheet.value = one)}>
          {say(`piece sheet ${one}`)}
          {one === "figures" && problems.value.length > 0 && <span class="count">{problems.value.length}</span>}
        </button>
      ))}
    </div>
  );
}

/** The course is what a tube is designed by. */
const courseFirst = (items: readonly Control[]): readonly Control[] => [...items].sort((one, other) => Number(other.kind === "cells") - Number(one.kind === "cells"));

/** The build first, then the balloons, then all that can be said besides, folded. */
function MadeOf() {
  const controls = design.value?.controls ?? [];
  const build = controls.filter(({ key }) => key === "build");
  const others = controls.filter(({ key }) => key !== "build" && key !== "balloons" && key !== "buildplan");
  if (controls.length === 0) return <p class="soft">{say("piece in the file")}</p>;
  return (
    <>
      <Parts />
      {build.flatMap(({ items }) => items ?? []).map((pattern) => (
        <section key={pattern.key} class="pattern" aria-label={pattern.label}>
          <h2>{pattern.label}</h2>
          {courseFirst(pattern.items ?? [pattern]).map((item) => (
            <ControlView key={item.key} control={item} />
          ))}
        </section>
      ))}
      <BalloonList />
      <section class="others" aria-labelledby="others">
        <h2 id="others">{say("piece others")}</h2>
        {others.map((item) => (
          <ControlView key={item.key} control={item} />
        ))}
      </section>
    </>
  );
}
