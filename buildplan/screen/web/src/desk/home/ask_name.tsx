// Asks for a name, in a window over the page; what is wrong with one is said below it.
import { useLayoutEffect, useRef, useState } from "preact/hooks";
import { refusal } from "../actions";
import { say } from "../words";

export interface Asking {
  heading: string;
  first: string; // the name that stands there at first
  verb: string;
  take: (name: string) => Promise<unknown>; // refused where it cannot be had
  close: () => void;
}

export function AskName({ heading, first, verb, take, close }: Asking) {
  const ground = useRef<HTMLDialogElement>(null);
  const field = useRef<HTMLInputElement>(null);
  const [name, setName] = useState(first);
  const [wrong, setWrong] = useState("");
  useLayoutEffect(() => {
    const dialog = ground.current;
    dialog?.showModal();
    field.current?.select();
    return () => dialog?.close(); // and the focus is again where it was
  }, []);
  const done = async (event: Event): Promise<void> => {
    event.preventDefault();
    if (!name.trim()) return;
    try {
      await take(name.trim());
      close();
    } catch (error) {
      setWrong(refusal(error));
      field.current?.focus();
    }
  };
  return (
    <dialog ref={ground} aria-labelledby="ask-heading" onClose={close}>
      <form onSubmit={(event) => void done(event)}>
        <h2 id="ask-heading">{heading}</h2>
        <label>
          {say("name")}
          <input
            ref={field}
            type="text"
            value={name}
            maxLength={80}
            required
            aria-invalid={wrong !== ""}
            aria-describedby="ask-wrong"
            onInput={(event) => {
              setName(event.currentTarget.value);
              setWrong("");
            }}
          />
        </label>
        <p id="ask-wrong" class="wanting" role="alert">
          {wrong}
        </p>
        <div class="row">
          <button type="button" onClick={close}>
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
