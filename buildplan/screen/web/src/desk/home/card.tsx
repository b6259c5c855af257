// One design: its picture, how large, of how many balloons, whether it stands; and what to do with it.
import { useState } from "preact/hooks";
import { cardDeed, tellError } from "../actions";
import { bare, isolated } from "../../isolates";
import type { Card } from "../contract";
import { hashOf } from "../route";
import { Sign } from "../sign";
import { notice } from "../state";
import { capital, say, sentence } from "../words";
import { AskName } from "./ask_name";

export function DesignCard({ card, fixed }: { card: Card; fixed: boolean }) {
  const [asked, setAsked] = useState<"copy" | "rename" | null>(null);
  const broken = card.state === "broken";
  return (
    <li class="card" data-state={card.state} data-name={card.name}>
      <CardPicture card={card} />
      <div class="told">
        <h2>
          <a href={hashOf({ screen: "design", name: card.name, tab: broken ? "file" : "piece" })}><bdi>{card.title || card.name}</bdi></a>
        </h2>
        {broken ? <p class="broken">{sentence(card.message)}</p> : <Told card={card} />}
      </div>
      {!fixed && (
        <div class="deeds">
          <Deed sign="copy" words="copy" of={card.title} act={() => setAsked("copy")} />
          <Deed sign="rename" words="rename" of={card.title} act={() => setAsked("rename")} />
          <Deed sign="away" words="put away" of={card.title} act={() => void putAway(card)} />
        </div>
      )}
      {asked && (
        <AskName
          heading={say(asked === "copy" ? "copy of" : "rename of", { name: card.title })}
          first={asked === "copy" ? bare(say("copy name", { name: card.title })) : card.title}
          verb={say(asked)}
          take={(name) => cardDeed(card.name, asked, name)}
          close={() => setAsked(null)}
        />
      )}
    </li>
  );
}

async function putAway(card: Card): Promise<void> {
  try {
    const { name } = await cardDeed(card.name, "away");
    const back = (): void => void cardDeed(name ?? card.name, "back").catch(tellError);
    notice(say("is put away", { name: card.title }), false, { words: say("bring back"), act: back });
  } catch (error) {
    tellError(error);
  }
}

function Deed({ sign, words, of, act }: { sign: "copy" | "rename" | "away"; words: string; of: string; act: () => void }) {
  return (
    <button type="button" class="plain" aria-label={`${say(words)}: ${isolated(of)}`} onClick={act}>
      <Sign name={sign} />
      <span>{say(words)}</span>
    </button>
  );
}

export function CardPicture({ card }: { card: Card }) {
  return (
    <div class="picture">
      {card.picture !== null ? (
        <img src={card.picture} alt="" loading="lazy" decoding="async" />
      ) : (
        <span class="none" data-state={card.state}>
          <Sign name={card.state === "broken" ? "caution" : "working"} />
        </span>
      )}
    </div>
  );
}

function Told({ card }: { card: Card }) {
  const told = card.width && card.height ? say("wide and high", { width: card.width, height: card.height }) : card.height;
  const size = card.state === "working" ? say("being worked out") : told;
  return (
    <>
      <p class="size">{[size, card.balloons].filter(Boolean).map((one) => <span key={one}>{one}</span>)}</p>
      {card.state === "ready" && (
        <p class="stands" data-stands={card.stands}>
          <Sign name={card.stands} />
          {capital(card.stands_words)}
        </p>
      )}
      {card.problems > 0 && (
        <p class="stands" data-stands="falls">
          <Sign name="caution" />
          {card.problems === 1 ? say("one problem") : say("problems count", { count: card.problems })}
        </p>
      )}
    </>
  );
}
