// The file's balloons: colour, size and number of each, what can be changed, and one more.
import { useSignal } from "@preact/signals";
import { made } from "./made";
import { design, facts } from "../state";
import { say } from "../words";
import { freeKey, ownBalloons, type OwnBalloon } from "./balloons";
import { tapping, tell } from "./choices";
import { Palette } from "./colours";
import { isFixed } from "./controls";
import { Folded, GroupItems } from "./many_controls";

export function BalloonList() {
  const own = ownBalloons(design.value);
  const counts = new Map(facts.value?.value.counts.map((one) => [one.key, one.count]));
  return (
    <section class="balloon-list" aria-labelledby="balloons">
      <h2 id="balloons">{say("piece balloons")}</h2>
      {own.map((one) => (
        <OneBalloon key={one.key} one={one} count={counts.get(one.key)} alone={own.length === 1} />
      ))}
      <NewBalloon own={own} />
    </section>
  );
}

function OneBalloon({ one, count, alone }: { one: OwnBalloon; count: number | undefined; alone: boolean }) {
  const control = { ...one.control, label: one.told, help: "" };
  const head = (
    <>
      <i class="dot" style={{ background: one.hex }} aria-hidden="true" />
      <span class="kind">{say(one.isLink ? "piece link" : "piece round")}</span>
      <b class="number">{count ?? ""}</b>
    </>
  );
  const takeOut = async (): Promise<void> => {
    if (await made([{ op: "take_out", path: one.control.path }])) tell(say("piece balloon gone", { balloon: one.label }));
  };
  return (
    <Folded control={control} extra={head}>
      <GroupItems control={control} />
      {!alone && !isFixed() && (
        <button type="button" class="danger" onClick={() => void takeOut()}>
          {say("piece balloon remove", { balloon: one.label })}
        </button>
      )}
    </Folded>
  );
}

/** One more balloon is like one that is there, in another colour. */
function NewBalloon({ own }: { own: readonly OwnBalloon[] }) {
  const open = useSignal(false);
  const like = useSignal("");
  const model = own.find(({ key }) => key === like.value) ?? own.find(({ isLink }) => isLink) ?? own[0];
  if (!model || isFixed()) return null;
  const add = async (value: string, name: string): Promise<void> => {
    const key = freeKey(name, own.map((one) => one.key));
    const one = { ...(model.control.value as object), colour: value, label: name };
    if (await made([{ op: "put", path: ["balloons", key], value: one }])) {
      tell(say("piece balloon new", { colour: name }));
      if (tapping.value?.does === "paint" && model.isLink) tapping.value = { ...tapping.value, balloon: key };
    }
    open.value = false;
  };
  return (
    <div class="new-balloon">
      <button type="button" class="add" aria-expanded={open.value} onClick={() => (open.value = !open.value)}>
        + {say("piece one more colour")}
      </button>
      {open.value && (
        <div class="panel-in">
          <label class="sized-like">
            <span>{say("piece sized like")}</span>
            <select value={model.key} onChange={(event) => (like.value = event.currentTarget.value)}>
              {own.map((one) => (
                <option key={one.key} value={one.key}>
                  {one.told}
                </option>
              ))}
            </select>
          </label>
          <Palette now="" choose={(value, name) => void add(value, name)} />
        </div>
      )}
    </div>
  );
}
