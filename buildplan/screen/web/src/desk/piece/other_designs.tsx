// Another design of the folder as a part: chosen by its picture.
import { useSignal } from "@preact/signals";
import { loadHome } from "../actions";
import { design, home } from "../state";
import { say } from "../words";

interface Props {
  choose: (part: unknown) => void;
  name: unknown; // a part that could be added, with a name that is free
}

export function OtherDesigns({ choose, name }: Props) {
  const open = useSignal(false);
  const others = (home.value?.designs ?? []).filter((card) => card.name !== design.value?.name && card.state !== "broken");
  const free = (name as { name?: string } | undefined)?.name ?? "P";
  const toggle = (): void => {
    open.value = !open.value;
    void loadHome();
  };
  return (
    <>
      <button type="button" aria-expanded={open.value} onClick={toggle}>
        {say("piece another design")}
      </button>
      {open.value && home.value && (
        <ul class="other-designs" aria-label={say("piece another design")}>
          {others.map((card) => (
            <li key={card.name}>
              <button type="button" onClick={() => choose({ name: free, design: card.file })}>
                {card.picture && <img src={card.picture} alt="" decoding="async" />}
                <span>{card.title}</span>
              </button>
            </li>
          ))}
          {others.length === 0 && <li>{say("piece no other design")}</li>}
        </ul>
      )}
    </>
  );
}
