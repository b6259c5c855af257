// The foot of the page for a new design: its name, its height, and the button that makes it.
import { useEffect, useState } from "preact/hooks";
import { refusal } from "../actions";
import { makeFromPicture, makeNew } from "../api";
import type { From, Made } from "../contract";
import { hashOf } from "../route";
import { say } from "../words";
import type { Chosen, Way } from "./new";
import { outlineOf, pathOf } from "./outline";

interface MakeProps {
  way: Way;
  chosen: Chosen;
  change: (part: Partial<Chosen>) => void;
  begun: (job: string) => void;
}

/** What is sent, or what is still to be chosen. */
function fromOf(way: Way, chosen: Chosen): From | File | string {
  const { begun, named, picture, strokes, height } = chosen;
  switch (way) {
    case "pattern":
      return begun && begun.kind !== "outline" ? { kind: begun.kind, key: begun.key } : say("choose a beginning");
    case "outline": {
      if (named) return height ? { kind: "outline", key: named.key, height } : say("say how high");
      const path = pathOf(outlineOf(strokes));
      if (!path) return say("draw an outline");
      return height ? { kind: "outline", path, height } : say("say how high");
    }
    case "picture":
      if (!picture) return say("choose a picture");
      return height ? picture : say("say how high");
    case "letters":
      return chosen.text.trim() ? { kind: "words", text: chosen.text.trim(), ...(height ? { height } : {}) } : say("write a text");
  }
}

/** The name that a design has as long as nobody gives it another. */
function nameOf(way: Way, { name, begun, named, picture, text }: Chosen): string {
  if (name.trim()) return name.trim();
  if (way === "pattern" && begun) return begun.title;
  if (way === "outline") return named?.title ?? say("my outline");
  if (way === "picture" && picture) return picture.name.replace(/\.\w+$/, "");
  return way === "letters" && text.trim() ? text.trim() : "";
}

export function Make({ way, chosen, change, begun }: MakeProps) {
  const [wanting, setWanting] = useState("");
  useEffect(() => setWanting(""), [way, chosen]); // what was wanting may be there now
  const [busy, setBusy] = useState(false);
  const name = nameOf(way, chosen);
  const make = async (event: Event): Promise<void> => {
    event.preventDefault();
    const from = fromOf(way, chosen);
    setWanting(typeof from === "string" ? from : "");
    if (typeof from === "string") {
      const height = (event.currentTarget as HTMLFormElement).querySelector<HTMLInputElement>(".height input:invalid");
      if (from === say("say how high")) height?.focus();
    }
    if (typeof from === "string" || busy) return;
    setBusy(true);
    try {
      const made: Made = from instanceof File ? await makeFromPicture(name, chosen.height, from) : await makeNew(name, from);
      if (made.job !== undefined) begun(made.job);
      else if (made.name !== undefined) location.hash = hashOf({ screen: "design", name: made.name, tab: "piece" });
    } catch (error) {
      setWanting(refusal(error));
    } finally {
      setBusy(false);
    }
  };
  return (
    <form class="make" noValidate onSubmit={(event) => void make(event)}>
      <label class="field">
        {say("name")}
        <input type="text" value={chosen.name} maxLength={80} placeholder={name} onInput={(event) => change({ name: event.currentTarget.value })} />
      </label>
      {way !== "pattern" && (
        <label class="field height">
          {say("height")}
          <input type="text" value={chosen.height} placeholder={say("height how")} required={way !== "letters"} onInput={(event) => change({ height: event.currentTarget.value })} />
        </label>
      )}
      <button type="submit" class="main" disabled={busy}>
        {say("make it")}
      </button>
      <p class="wanting" role="alert">
        {wanting}
      </p>
    </form>
  );
}
