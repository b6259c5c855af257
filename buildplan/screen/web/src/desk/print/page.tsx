// The print tab: what is to be printed of a design and how; what was made, and how far the rest is.
import { useEffect, useState } from "preact/hooks";
import { refusal, tellError } from "../actions";
import { getPrinting, print } from "../api";
import type { Choice, Printing } from "../contract";
import { jobs, problems } from "../state";
import { capital, say, words } from "../words";
import { PrintJobs } from "./jobs";
import { Made } from "./made";
import { Beside, WISHES, Wishes, type Counts, type Wished } from "./wishes";

const ASKED = ["edition", "paper", "language", "units", "brand", "key", "sign"] as const;
type Asked = (typeof ASKED)[number];

export function PrintPage({ name }: { name: string }) {
  const [printing, setPrinting] = useState<Printing | null>(null);
  const [what, setWhat] = useState("");
  const [wanting, setWanting] = useState("");
  const [wishes, setWishes] = useState<Wished>({});
  const [counts, setCounts] = useState<Counts>({});
  const [chosen, setChosen] = useState<Partial<Record<Asked, string>>>({});
  useEffect(() => {
    void getPrinting().then((found) => {
      setPrinting(found);
      setWhat((was) => was || (found.whats[0]?.key ?? ""));
    }, tellError);
  }, [words.value.language]);
  const kind = printing?.whats.find((one) => one.key === what);
  if (!printing || !kind) return <main id="main" class="print" />;
  const edition = kind.takes.includes("edition") ? (chosen.edition ?? firstOf(printing, "edition")) : "";
  const isAsked = (one: string): boolean => kind.takes.includes(one) && (edition === "" || (printing.of_edition[one] ?? edition) === edition);
  const asked = ASKED.filter((one) => isAsked(one) && choicesOf(printing, one).length > 0);
  const wished = WISHES.filter(({ key }) => isAsked(key) && (key !== "password" || (asked.includes("sign") && chosen.sign)));
  const others = kind.takes.includes("beside") ? printing.designs.filter((one) => one.value !== name) : [];
  const own = kind.takes.includes("count") ? printing.designs.find((one) => one.value === name) : undefined;
  const make = async (event: Event): Promise<void> => {
    event.preventDefault();
    const sent = asked.map((one) => [one, chosen[one] ?? firstOf(printing, one)]).filter(([, value]) => value !== "");
    setWanting("");
    try {
      const more = wished.flatMap(({ key }) => (wishes[key] ? [[key, wishes[key]] as const] : []));
      const beside = Object.fromEntries(others.flatMap(({ value }) => (value in counts ? [[value, counts[value] ?? 1]] : [])));
      const many = own ? { count: counts[name] ?? 1, beside } : {};
      const { job } = await print(name, { what, ...Object.fromEntries(sent), ...Object.fromEntries(more), ...many });
      setWishes(({ password: _, ...kept }) => kept);
      document.querySelector(".jobs")?.scrollIntoView({ block: "nearest" });
      jobs.value = { [job]: { job, what, name, state: "waiting", share: 0, words: "", message: "", files: [] }, ...jobs.value };
    } catch (error) {
      setWanting(refusal(error));
    }
  };
  return (
    <main id="main" class="print">
      <form onSubmit={(event) => void make(event)}>
        <h1 class="hidden">{say("print")}</h1>
        {problems.value.length > 0 && <p class="caution">{say("print problems")}</p>}
        <fieldset class="whats">
          <legend>{say("what to print")}</legend>
          {printing.whats.map((one) => (
            <label key={one.key} class="what">
              <input type="radio" name="what" checked={one.key === what} onChange={() => setWhat(one.key)} />
              <span>
                <strong>{one.words}</strong>
                <small>{one.about}</small>
              </span>
            </label>
          ))}
        </fieldset>
        <div class="asked">
          {asked.map((one) => (
            <Chooser key={one} asked={one} choices={choicesOf(printing, one)} value={chosen[one] ?? firstOf(printing, one)} choose={(value) => setChosen((was) => ({ ...was, [one]: value }))} />
          ))}
        </div>
        {own && <Beside own={own} others={others} counts={counts} count={setCounts} />}
        <Wishes wished={wished} now={wishes} wish={(key, value) => setWishes((was) => ({ ...was, [key]: value }))} />
        <button type="submit" class="main large">
          {say("make it")}
        </button>
        <p class="wanting" role="alert">
          {wanting}
        </p>
      </form>
      <div class="aside">
        <PrintJobs name={name} whats={printing.whats} />
        <Made name={name} />
      </div>
    </main>
  );
}

function choicesOf(printing: Printing, asked: Asked): readonly Choice[] {
  switch (asked) {
    case "edition":
      return printing.editions;
    case "paper":
      return printing.papers;
    case "language":
      return printing.languages;
    case "units":
      return printing.units;
    case "key":
      return printing.keys.length > 0 ? [{ value: "", label: say("no key") }, ...printing.keys] : [];
    case "sign":
      return printing.signers.length > 0 ? [{ value: "", label: say("no sign") }, ...printing.signers] : [];
    case "brand":
      return printing.brands.length > 0 ? [{ value: "", label: say("no brand") }, ...printing.brands] : [];
  }
}

/** What is taken where nothing else was chosen: the page's language, else what is named first. */
function firstOf(printing: Printing, asked: Asked): string {
  const choices = choicesOf(printing, asked);
  const own = asked === "language" ? choices.find((one) => one.value === words.value.language) : undefined;
  return (own ?? choices[0])?.value ?? "";
}

/** Whether files of the folder are chosen from: their names stay as they are. */
const isFile = (asked: Asked): boolean => asked === "key" || asked === "sign";

interface ChooserProps {
  asked: Asked;
  choices: readonly Choice[];
  value: string;
  choose: (value: string) => void;
}

function Chooser({ asked, choices, value, choose }: ChooserProps) {
  return (
    <label class="field">
      {say(asked === "language" ? "print language" : asked)}
      <select value={value} onChange={(event) => choose(event.currentTarget.value)}>
        {choices.map((one) => (
          <option key={one.value} value={one.value}>
            {isFile(asked) && one.value !== "" ? one.label : capital(one.label)}
          </option>
        ))}
      </select>
    </label>
  );
}
