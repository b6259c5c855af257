// What is around every screen: where one is, what is saved, what is said.
import { useEffect } from "preact/hooks";
import { openDesign } from "./actions";
import { FilePage } from "./file/page";
import { HomePage } from "./home/page";
import { NewPage } from "./home/new";
import { Head } from "./head";
import { Notices } from "./notices";
import { PiecePage } from "./piece/page";
import { PrintPage } from "./print/page";
import type { Tab } from "./route";
import { design, missing, place } from "./state";
import { say } from "./words";

const TAB_PAGES = { piece: PiecePage, file: FilePage, print: PrintPage } as const;

export function Shell() {
  const now = place.value;
  return (
    <>
      <a class="skip" href="#main" onClick={toMain}>
        {say("skip")}
      </a>
      <Head />
      <Notices />
      {now.screen === "home" && <HomePage />}
      {now.screen === "new" && <NewPage />}
      {now.screen === "design" && <OneDesign name={now.name} tab={now.tab} />}
    </>
  );
}

/** The end of the address says where the reader is: it is left as it is. */
function toMain(event: Event): void {
  event.preventDefault();
  const main = document.querySelector("main");
  main?.setAttribute("tabindex", "-1");
  main?.focus();
}

function OneDesign({ name, tab }: { name: string; tab: Tab }) {
  useEffect(() => void openDesign(name), [name]);
  if (missing.value !== null) {
    return (
      <main class="alone">
        <p class="caution">{missing.value}</p>
        <a class="button" href="#home">
          {say("to home")}
        </a>
      </main>
    );
  }
  if (design.value?.name !== name) {
    return (
      <main class="alone">
        <p role="status">{say("opening", { name })}</p>
      </main>
    );
  }
  const Page = TAB_PAGES[tab];
  return <Page name={name} />;
}
