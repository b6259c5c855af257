// The order of work: a slider along it that builds the piece in the picture, and each step's
// picture as it will be printed.
import { useEffect } from "preact/hooks";
import { stepPicture } from "../api";
import { piece, unworkable, version } from "../state";
import { say } from "../words";
import { asPrinted as printed, moment } from "./choices";

export function OrderOfWork() {
  const found = piece.value;
  useEffect(
    () => () => {
      moment.value = null;
      printed.value = false;
    },
    [],
  );
  if (!found || found.value.piece.steps.length === 0) return <NotYet />;
  const { piece: shown } = found.value;
  const coming = momentsThatCome(found.value);
  const last = coming.length - 1;
  const at = moment.value === null ? last : Math.max(0, coming.findIndex((each) => each >= (moment.value ?? 0)));
  const [number, turn] = shown.moments[coming[at] ?? 0] ?? [1, 0];
  const step = shown.steps[number - 1];
  const said = (words: Readonly<Record<string, string>> | undefined): string => Object.values(words ?? {})[0] ?? "";
  const title = said(step?.turns[turn]?.name) || said(step?.title);
  const words = moment.value === null ? say("piece all done", { count: shown.steps.length }) : say("piece step of", { number, count: shown.steps.length, name: title });
  const go = (to: number): void => {
    moment.value = to >= last ? null : (coming[to] ?? null);
  };
  return (
    <section class="work" aria-labelledby="work">
      <h2 id="work">{say("piece work")}</h2>
      <div class="along">
        <button type="button" aria-label={say("piece one step back")} disabled={at <= 0} onClick={() => go(at - 1)}>
          ←
        </button>
        <input type="range" min={0} max={Math.max(last, 0)} value={at} aria-label={say("piece work along")} aria-valuetext={words} onInput={(event) => go(Number(event.currentTarget.value))} />
        <button type="button" aria-label={say("piece one step on")} disabled={at >= last} onClick={() => go(at + 1)}>
          →
        </button>
      </div>
      <p class="step-name" role="status">
        {words}
      </p>
      {moment.value !== null && <p class="step-words">{said(step?.text)}</p>}
      <label class="switch">
        <input type="checkbox" role="switch" checked={printed.value} onChange={() => (printed.value = !printed.value)} />
        <span>{say("piece as printed")}</span>
      </label>
      {printed.value && step && <img class="printed-step" src={stepPicture(found.name, number, found.version)} alt={say("piece printed step", { number, name: said(step.title) })} />}
    </section>
  );
}

/** The order of work comes last of what is worked out; its place is kept meanwhile. */
function NotYet() {
  return (
    <section class="work" aria-labelledby="work">
      <h2 id="work">{say("piece work")}</h2>
      <div class="along">
        <button type="button" disabled aria-label={say("piece one step back")}>
          ←
        </button>
        <input type="range" disabled aria-label={say("piece work along")} />
        <button type="button" disabled aria-label={say("piece one step on")}>
          →
        </button>
      </div>
      <p class="soft" role="status">
        {unworkable.value?.version === version.value ? say("piece no figures") : say("piece first working")}
      </p>
    </section>
  );
}

/** The moments at which something comes to the piece. */
function momentsThatCome({ piece: shown }: { piece: { links: readonly { moment: number }[]; locks: readonly { moment: number }[] } }): number[] {
  return [...new Set([...shown.links, ...shown.locks].map((each) => each.moment))].sort((one, other) => one - other);
}
