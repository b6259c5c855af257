// Home: the folder's designs as cards, those put away, and the way to a new one.
import { useEffect, useState } from "preact/hooks";
import { loadHome } from "../actions";
import type { Card, Home } from "../contract";
import { Sign } from "../sign";
import { home } from "../state";
import { say } from "../words";
import { DesignCard } from "./card";
import { Shelf } from "./shelf";
import { useSight } from "./sight";

const MANY = 8; // cards that are seen at a glance

export function HomePage() {
  useEffect(() => void loadHome(), []);
  const found = home.value;
  return (
    <main id="main" class="home">
      {found ? <Designs found={found} /> : <p role="status">{say("looking")}</p>}
    </main>
  );
}

function Designs({ found }: { found: Home }) {
  const [sought, setSought] = useState("");
  const shown = found.designs.filter((one) => isSought(one, sought));
  useSight(shown.filter((one) => one.state === "working").map((one) => one.name));
  return (
    <>
      <div class="top">
        <div>
          <h1>{say("designs")}</h1>
          <p class="folder">{found.folder}</p>
        </div>
        {found.designs.length > MANY && <Search sought={sought} seek={setSought} />}
        {!found.read_only && found.designs.length > 0 && <ToNew />}
      </div>
      {found.read_only && <p class="caution">{say("read only")}</p>}
      {found.designs.length === 0 && <Nothing fixed={found.read_only} />}
      <p class="hidden" role="status">
        {sought && say("found of", { found: shown.length, count: found.designs.length })}
      </p>
      {sought && shown.length === 0 && <p>{say("none found", { sought })}</p>}
      <ul class="cards">
        {shown.map((one) => (
          <DesignCard key={one.name} card={one} fixed={found.read_only} />
        ))}
      </ul>
      {found.away.length > 0 && <Shelf away={found.away} fixed={found.read_only} />}
    </>
  );
}

function isSought(card: Card, sought: string): boolean {
  const plain = (text: string): string => text.normalize("NFKD").replace(/\p{M}/gu, "").toLocaleLowerCase();
  return plain(`${card.title} ${card.file} ${card.pattern}`).includes(plain(sought.trim()));
}

function Search({ sought, seek }: { sought: string; seek: (text: string) => void }) {
  return (
    <label class="search">
      <Sign name="search" />
      <span class="hidden">{say("search")}</span>
      <input type="search" placeholder={say("search")} value={sought} onInput={(event) => seek(event.currentTarget.value)} />
    </label>
  );
}

function ToNew() {
  return (
    <a class="button main" href="#new">
      <Sign name="add" />
      {say("new design")}
    </a>
  );
}

function Nothing({ fixed }: { fixed: boolean }) {
  return (
    <div class="nothing">
      <p>{say("no designs")}</p>
      {!fixed && <p>{say("no designs how")}</p>}
      {!fixed && <ToNew />}
    </div>
  );
}
