// The four ways to begin: what is chosen, drawn, taken or written in each.
import { useEffect, useState } from "preact/hooks";
import type { Beginning } from "../contract";
import { Sign } from "../sign";
import { say } from "../words";
import { OutlineBoard } from "./board";
import type { WayProps } from "./new";

interface PickProps {
  legend: string;
  name: string;
  from: readonly Beginning[];
  picked: Beginning | null;
  pick: (one: Beginning) => void;
}

function Pick({ legend, name, from, picked, pick }: PickProps) {
  if (from.length === 0) return null;
  return (
    <fieldset class="pick">
      <legend>{legend}</legend>
      <div class="cards small">
        {from.map((one) => (
          <label key={`${one.kind} ${one.key}`} class="card">
            <input type="radio" name={name} checked={picked?.kind === one.kind && picked.key === one.key} onChange={() => pick(one)} />
            <BeginningPicture one={one} />
            <div class="told">
              <strong><bdi>{one.title}</bdi></strong>
              {one.about && <p>{one.about}</p>}
            </div>
          </label>
        ))}
      </div>
    </fieldset>
  );
}

/** Drawn once for every desk: the first time that takes a moment. */
function BeginningPicture({ one }: { one: Beginning }) {
  const [drawn, setDrawn] = useState(false);
  const address = one.picture;
  return (
    <div class="picture">
      {!drawn && (
        <span class="none">
          <Sign name={address === null && one.kind === "gallery" ? "piece" : "working"} />
        </span>
      )}
      {address !== null && <img src={address} alt="" loading="lazy" decoding="async" data-drawn={drawn} onLoad={() => setDrawn(true)} />}
    </div>
  );
}

export function PatternWay({ chosen, change, beginnings }: WayProps) {
  const pick = (begun: Beginning): void => change({ begun });
  return (
    <section class="panel">
      <Pick legend={say("patterns")} name="begun" from={beginnings.filter((one) => one.kind === "pattern")} picked={chosen.begun} pick={pick} />
      <Pick legend={say("whole pieces")} name="begun" from={beginnings.filter((one) => one.kind === "gallery")} picked={chosen.begun} pick={pick} />
    </section>
  );
}

export function OutlineWay({ chosen, change, beginnings }: WayProps) {
  return (
    <section class="panel two">
      <div>
        <p>{say("outline how")}</p>
        <OutlineBoard strokes={chosen.strokes} change={(strokes) => change({ strokes, named: null })} />
      </div>
      <Pick
        legend={say("named outlines")}
        name="named"
        from={beginnings.filter((one) => one.kind === "outline")}
        picked={chosen.named}
        pick={(named) => change({ named, strokes: [] })}
      />
    </section>
  );
}

const KINDS = "image/png,image/jpeg,image/svg+xml,.png,.jpg,.jpeg,.svg";

export function PictureWay({ chosen, change }: WayProps) {
  const [over, setOver] = useState(false);
  return (
    <section class="panel">
      <p>{say("picture how")}</p>
      <label class="drop" data-over={over} onDragEnter={() => setOver(true)} onDragLeave={() => setOver(false)} onDrop={() => setOver(false)}>
        {chosen.picture ? <Preview picture={chosen.picture} /> : <span>{say("drop here")}</span>}
        <input type="file" accept={KINDS} onChange={(event) => change({ picture: event.currentTarget.files?.[0] ?? chosen.picture })} />
      </label>
    </section>
  );
}

function Preview({ picture }: { picture: File }) {
  const [address, setAddress] = useState("");
  useEffect(() => {
    const made = URL.createObjectURL(picture);
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [picture]);
  return (
    <>
      {address && <img src={address} alt="" />}
      <span>{picture.name}</span>
    </>
  );
}

export function WordsWay({ chosen, change }: WayProps) {
  return (
    <section class="panel">
      <label class="field">
        {say("text")}
        <input type="text" class="capitals" value={chosen.text} maxLength={24} onInput={(event) => change({ text: event.currentTarget.value })} />
        <small>{say("text how")}</small>
      </label>
    </section>
  );
}
