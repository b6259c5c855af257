// The course with its meter, and courses to pick instead.
import { useSignal } from "@preact/signals";
import { edit, tellError } from "../actions";
import { getOffers } from "../api";
import type { Course, Offer } from "../contract";
import { design, facts } from "../state";
import { say } from "../words";
import { tell } from "./choices";
import { Strip } from "./strip";

export function CourseOfTube({ course, offers }: { course: Course; offers: boolean }) {
  return (
    <>
      <Meter course={course} />
      <Strip course={course} />
      {offers && !design.value?.read_only && <Offers />}
    </>
  );
}

/** How far the course turns, and how its sides balance, in the server's figures. */
function Meter({ course }: { course: Course }) {
  const turn = facts.value?.version === design.value?.version ? facts.value?.value.turn : null;
  const total = course.total_deg ?? turn?.total ?? null;
  const needed = course.needed_deg ?? turn?.needed ?? null;
  if (total === null) return null;
  const words = needed === null ? say("piece turns", { total: degrees(total) }) : say("piece turns of", { total: degrees(total), needed: degrees(needed) });
  return (
    <div class="meter-of-turn">
      {needed !== null && needed > 0 && <meter min={0} max={2 * needed} value={Math.max(0, Math.min(2 * needed, total))} aria-hidden="true" data-round={total === needed} />}
      <p>
        <b>{words}</b>
      </p>
      {(course.left || course.right) && (
        <p class="sides">
          <span>{course.left}</span> <span>{course.right}</span>
        </p>
      )}
    </div>
  );
}

const degrees = (value: number): string => String(Math.round(value));

/** Courses near this one that close and stand; asked for by hand, for the search takes a while. */
function Offers() {
  const found = useSignal<readonly Offer[] | null>(null);
  const state = useSignal<"" | "asked">("");
  const of = useSignal("");
  const name = design.value?.name ?? "";
  const ask = async (): Promise<void> => {
    state.value = "asked";
    try {
      found.value = await getOffers(name);
      of.value = name;
      tell(say(found.value.length ? "piece offers found" : "piece no offers", { count: found.value.length }));
    } catch (error) {
      tellError(error);
    } finally {
      state.value = "";
    }
  };
  const take = async (offer: Offer): Promise<void> => {
    if (await edit(offer.edits)) {
      tell(say("piece offer taken"));
      found.value = null;
    }
  };
  const shown = of.value === name ? found.value : null;
  return (
    <div class="offers">
      <button type="button" disabled={state.value === "asked"} aria-busy={state.value === "asked"} onClick={() => void ask()}>
        {say(state.value === "asked" ? "piece offers asked" : "piece offers")}
      </button>
      {shown?.length === 0 && <p>{say("piece no offers")}</p>}
      {shown && shown.length > 0 && (
        <ul>
          {shown.map((offer) => (
            <li key={offer.words}>
              <button type="button" class="offer" onClick={() => void take(offer)}>
                <img src={offer.picture} alt="" />
                <span>{offer.words}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
