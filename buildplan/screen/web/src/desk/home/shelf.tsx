// The designs that were put away: still there, and brought back with one press.
import { cardDeed, tellError } from "../actions";
import type { Card } from "../contract";
import { Sign } from "../sign";
import { say } from "../words";
import { CardPicture } from "./card";

export function Shelf({ away, fixed }: { away: readonly Card[]; fixed: boolean }) {
  return (
    <details class="shelf">
      <summary>{say("away count", { count: away.length })}</summary>
      <ul class="cards small">
        {away.map((one) => (
          <li class="card" key={one.name}>
            <CardPicture card={one} />
            <div class="told">
              <h2><bdi>{one.title || one.name}</bdi></h2>
            </div>
            {!fixed && (
              <div class="deeds">
                <button type="button" class="plain" aria-label={`${say("bring back")}: ${one.title}`} onClick={() => void cardDeed(one.name, "back").catch(tellError)}>
                  <Sign name="bring" />
                  <span>{say("bring back")}</span>
                </button>
              </div>
            )}
          </li>
        ))}
      </ul>
    </details>
  );
}
