// What the desk has to say: a lost connection, a change from outside, two changes that met.
import { useEffect, useRef } from "preact/hooks";
import { Sign } from "./sign";
import { connected, dismiss, met, mine, notices, place, saving, type Notice } from "./state";
import { say, sentence } from "./words";

const SHOWN_MS = 8000;

export function Notices() {
  const inDesign = place.value.screen === "design";
  return (
    <div class="notices">
      <div role="alert">{!connected.value && <p class="notice grave">{say("connection lost")}</p>}</div>
      {inDesign && <TwoVersions />}
      <div role="status">
        {notices.value.map((one) => (
          <OneNotice key={one.id} {...one} />
        ))}
      </div>
      <div role="status" class="hidden">
        {inDesign && saving.value !== "saving" && say(saving.value)}
      </div>
    </div>
  );
}

function OneNotice({ id, text, grave, deed }: Notice) {
  useEffect(() => {
    if (grave) return undefined;
    const clock = setTimeout(() => dismiss(id), SHOWN_MS);
    return () => clearTimeout(clock);
  }, [id, grave]);
  return (
    <p class={grave ? "notice grave" : "notice"}>
      {grave && <Sign name="caution" />}
      <span>{text}</span>
      {deed && (
        <button
          type="button"
          onClick={() => {
            dismiss(id);
            deed.act();
          }}
        >
          {deed.words}
        </button>
      )}
      <button type="button" class="plain" aria-label={say("close")} onClick={() => dismiss(id)}>
        <Sign name="close" />
      </button>
    </p>
  );
}

/** Both changes are kept; which one stands in the file, and where the other is, is said. */
function TwoVersions() {
  const found = met.value;
  const ground = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (found) ground.current?.focus();
  }, [found]);
  if (!found || mine.value !== null) return null; // the file tab says it itself
  return (
    <div class="notice grave met" role="alertdialog" aria-labelledby="met" tabIndex={-1} ref={ground}>
      <Sign name="caution" />
      <p id="met">
        {sentence(found.message)} {found.kept && say("met kept", { file: found.kept })}
      </p>
      <button type="button" onClick={() => (met.value = null)}>
        {say("have read")}
      </button>
    </div>
  );
}
