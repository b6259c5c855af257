// Painting in the picture: what a tap paints, and the change of the file that does it.
import { made } from "./made";
import { design, facts } from "../state";
import { say } from "../words";
import { ownBalloons } from "./balloons";
import { tapping, tell } from "./choices";
import { stroke } from "./picking";

export const hexOf = (balloon: string): string => ownBalloons(design.value).find((one) => one.key === balloon)?.hex ?? "#888888";

/** The links that a tap on a link would paint now. */
export function strokeAt(link: string): readonly string[] {
  const now = tapping.value;
  return now?.does === "paint" ? stroke(facts.value?.value.paint?.parts ?? [], link, now.scope) : [];
}

export async function paintAt(link: string): Promise<void> {
  const now = tapping.value;
  const links = strokeAt(link);
  if (now?.does !== "paint") return;
  if (links.length === 0) return tell(say("piece paint not here"));
  const label = ownBalloons(design.value).find((one) => one.key === now.balloon)?.label ?? now.balloon;
  if (await made([{ op: "paint", links, balloon: now.balloon }])) tell(say("piece painted", { count: links.length, colour: label }));
}
