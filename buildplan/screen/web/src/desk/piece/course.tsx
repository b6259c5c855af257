// The course with its meter, and courses to pick instead.
import { useSignal } from "@preact/signals";
import { tellError } from "../actions";
import { made } from "./made";
import { getOffers } from "../api";
import type { Course, Offer } from "../contract";
import { design } from "../state";
import { say } from "../words";
import { tell } from "./choices";
import { Strip } from "./strip";

export function CourseOfTube({ course, offers }: { course: Course; offers: boolean }) {
  return (
    <>
      <Meter course={course} />
      <Strip course={course} />
      {offers && closes(course) && !design.value?.read_only && <Offers />}
    </>
  );
}

/** An open course closes nowhere: there is nothing to look for. */
const closes = ({ turn }: Course): boolean => turn === null || turn.needed_deg !== null;

/** How far the course turns, and how its sides balance, in the server's figures and words. */
function Meter({ course }: { course: Course }) {
  const { turn } = course;
  if (!turn) return null;
  const needed = turn.needed_deg;
  const now = Math.max(turn.least_deg, Math.min(turn.most_deg, needed ?? turn.most_deg));
  return (
    <div class="meter-of-turn" data-fits={turn.fits}>
      {needed !== null && <span class="mark" aria-hidden="true" />}
      {needed !== null && <meter min={0} max={2 * needed} low={needed - 1} value={Math.max(0, Math.min(2 * needed, now))} aria-hidden="true" />}
      <p>
        <b>{turn.words}</b> {course.short && <span>{course.short}</span>}
      </p>
      <p class="sides">
        {course.sides.map((side) => (
          <span key={side}>{side}</span>
        ))}
      </p>
    </div>
  );
}

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
    if (await made(offer.edits)) {
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
