// What the piece comes to: the server's figures in its words, and what is wrong with a button each.
import type { Facts, Problem } from "../contract";
import { design, facts, problems, unworkable, version, working } from "../state";
import { say, sentence } from "../words";
import { ownBalloons } from "./balloons";
import { lit, sheet } from "./choices";
import { isFixed, mend } from "./controls";

export function Figures() {
  const known = facts.value?.value ?? null;
  const old = facts.value?.version !== version.value;
  return (
    <section class="figures" aria-labelledby="figures" aria-busy={working.value} data-old={old}>
      <h2 id="figures">{say("piece figures")}</h2>
      {known ? <Known known={known} /> : <p class="soft">{unworkable.value?.version === version.value ? say("piece no figures") : say("piece first working")}</p>}
    </section>
  );
}

function Known({ known }: { known: Facts }) {
  const { stands } = known;
  const called = new Map(ownBalloons(design.value).map((one) => [one.key, one.told]));
  const rows: readonly (readonly [string, string | null])[] = [
    ["piece height", known.sizes.height],
    ["piece width", known.sizes.width],
    ["piece depth", known.sizes.depth],
    ["piece weight", known.weight],
    ["piece air", known.air],
    ["piece hours", known.hours],
    ["piece cost", known.cost],
  ];
  return (
    <>
      <p class="stands" data-stands={stands.state}>
        {stands.words}
      </p>
      <p class="total">
        <b>{known.balloons}</b>
      </p>
      <ul class="counts">
        {known.counts.map((one) => (
          <li key={one.key}>
            <i class="dot" style={{ background: one.colour }} aria-hidden="true" />
            <span><bdi>{called.get(one.key) ?? one.label}</bdi></span>
            <b>{one.count}</b>
          </li>
        ))}
      </ul>
      <dl>
        {rows.map(([key, words]) =>
          words === null ? null : (
            <div key={key}>
              <dt>{say(key)}</dt>
              <dd>{words}</dd>
            </div>
          ),
        )}
      </dl>
      {known.hands !== null && <p class="soft hands">{known.hands}</p>}
      {known.cost === null && <p class="soft">{say("piece no prices")}</p>}
      <details class="fold">
        <summary>{say("piece all figures")}</summary>
        <dl class="rows">
          {known.rows.map(([label, words]) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{words}</dd>
            </div>
          ))}
        </dl>
      </details>
    </>
  );
}

export function Problems() {
  const all = problems.value;
  return (
    <section class="problems" aria-labelledby="problems">
      <h2 id="problems">
        {say("piece problems")} {all.length > 0 && <span class="count">{all.length}</span>}
      </h2>
      <div role="status">{all.length === 0 && <p class="fine">{working.value ? say("piece looking") : say("piece no problems")}</p>}</div>
      {all.length > 0 && (
        <ul>
          {all.map((problem) => (
            <OneProblem key={`${problem.number} ${problem.message}`} problem={problem} />
          ))}
        </ul>
      )}
    </section>
  );
}

/** What is done about a problem here, where its advice is for those who write the file. */
const BY_HAND: Readonly<Record<string, string>> = { "loose-part": "piece parts how" };

function OneProblem({ problem }: { problem: Problem }) {
  const { suggestion, joints } = problem;
  const ways = suggestion?.ways ?? [];
  const byHand = BY_HAND[problem.kind];
  const pointed = joints.length > 0 && joints === lit.value;
  return (
    <li class="problem">
      <p>{sentence(problem.message)}</p>
      <div class="ways">
        {!isFixed() &&
          ways.map(({ way, words }) => (
            <button key={way} type="button" onClick={() => void mend(problem, way, words)}>
              {words}
            </button>
          ))}
        {joints.length > 0 && (
          <button type="button" class="plain" aria-pressed={pointed} onClick={() => (lit.value = pointed ? [] : joints)}>
            {say("piece show where", { joints: few(joints) })}
          </button>
        )}
        {problem.path.length > 0 && (
          <button type="button" class="plain" onClick={() => goTo(problem)}>
            {say("piece to its place")}
          </button>
        )}
      </div>
      {ways.length === 0 && suggestion?.words && <p class="soft">{sentence(byHand ? say(byHand) : suggestion.words)}</p>}
    </li>
  );
}

const FEW = 4;
const few = (joints: readonly string[]): string => joints.slice(0, FEW).join(", ") + (joints.length > FEW ? " ..." : "");

/** Open the folds round the control that a problem is of, and go there. */
function goTo(problem: Problem): void {
  sheet.value = "made";
  requestAnimationFrame(() => {
    const marked = [...document.querySelectorAll<HTMLElement>(".made [data-wrong=true]")];
    for (const each of marked) if (each instanceof HTMLDetailsElement) each.open = true;
    const field = marked.filter((each) => each.matches(".field")).find((each) => each.textContent?.includes(problem.message)) ?? marked.at(-1);
    field?.scrollIntoView({ block: "center" });
    field?.querySelector<HTMLElement>("input, select, button")?.focus();
  });
}

/** The piece in one line: for a narrow page, where the figures are behind a tab. */
export function InShort() {
  const known = facts.value?.value;
  if (!known || design.value?.name === undefined) return null;
  return (
    <p class="in-short" data-old={facts.value?.version !== version.value}>
      <b>{known.balloons}</b> <span>{known.sizes.height}</span> <span data-stands={known.stands.state}>{known.stands.words}</span>
    </p>
  );
}
