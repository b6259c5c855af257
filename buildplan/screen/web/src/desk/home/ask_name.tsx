// Asks for a name, in a window over the page.
import { useEffect, useRef, useState } from "preact/hooks";
import { say } from "../words";

export interface Asking {
  heading: string;
  first: string; // the name that stands there at first
  verb: string;
  done: (name: string | null) => void;
}

export function AskName({ heading, first, verb, done }: Asking) {
  const ground = useRef<HTMLDialogElement>(null);
  const field = useRef<HTMLInputElement>(null);
  const [name, setName] = useState(first);
  useEffect(() => {
    ground.current?.showModal();
    field.current?.select();
  }, []);
  const take = (event: Event): void => {
    event.preventDefault();
    if (name.trim()) done(name.trim());
  };
  return (
    <dialog ref={ground} aria-labelledby="ask-heading" onCancel={() => done(null)}>
      <form onSubmit={take}>
        <h2 id="ask-heading">{heading}</h2>
        <label>
          {say("name")}
          <input ref={field} type="text" value={name} maxLength={80} required onInput={(event) => setName(event.currentTarget.value)} />
        </label>
        <div class="row">
          <button type="button" onClick={() => done(null)}>
            {say("cancel")}
          </button>
          <button type="submit" class="main">
            {verb}
          </button>
        </div>
      </form>
    </dialog>
  );
}
