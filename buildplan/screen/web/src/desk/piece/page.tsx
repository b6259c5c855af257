// The piece itself: its shape in the middle, what it is made of beside it, and what it comes to.
import { useEffect } from "preact/hooks";
import { design, problems } from "../state";
import { say } from "../words";
import { asPrinted, forget, sheet, SHEETS, told } from "./choices";
import { Figures, InShort, Problems } from "./figures";
import { MadeOf } from "./made_of";
import { Picture } from "./picture";
import { OrderOfWork } from "./work";

export function PiecePage({ name }: { name: string }) {
  useEffect(() => forget, [name]);
  const now = sheet.value;
  return (
    <main class="piece" id="main" data-sheet={now} data-printed={asPrinted.value}>
      <h1 class="hidden" dir="auto">{design.value?.title || name}</h1>
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
