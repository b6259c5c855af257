// The piece in the middle: turned by hand, painted and picked on, with what is drawn over it.
import { useSignalEffect } from "@preact/signals";
import { useEffect, useRef, useState } from "preact/hooks";
import type { Body } from "../../bodies";
import type { Pose } from "../../camera";
import type { Of } from "../state";
import type { Shown } from "../contract";
import { facts, piece, unworkable, version, waitWords, working } from "../state";
import { say } from "../words";
import { aimed, brushed, door, gust, lit, moment, overlays, tapping, type Overlay } from "./choices";
import { dimensions, doorway, foot, hold, wind } from "./drawn";
import { hexOf, paintAt, strokeAt } from "./painting";
import { drawnFaces, faceAt } from "./faces";
import { meantLinks } from "./meant";
import { jointAt, partOf } from "./picking";
import { pickJoint, pickPart, pickSide } from "./placing";
import { PictureBar, Seeing, Told } from "./tools";
import { viewOf, type View } from "./view";

export function Picture({ name }: { name: string }) {
  const found = piece.value?.name === name ? piece.value : null;
  return (
    <section class="picture" aria-label={say("piece picture")} data-state={stateNow(found)}>
      {found ? <Turning found={found} /> : <Nothing />}
      <p class="sign-of-work" role="status">
        {stateWords(found)}
      </p>
    </section>
  );
}

function stateNow(found: Of<Shown> | null): string {
  if (working.value) return "working";
  return unworkable.value?.version === version.value && found ? "before" : "now";
}

function stateWords(found: Of<Shown> | null): string {
  if (working.value) return [say(found ? "piece working" : "piece first working"), waitWords.value].join(" ").trim();
  return unworkable.value?.version === version.value && found ? say("piece before") : "";
}

function Nothing() {
  const cannot = unworkable.value?.version === version.value;
  return (
    <div class="turning">
      {tapping.value && (
        <div class="picture-bar">
          <Told />
        </div>
      )}
      <div class="stage empty">{cannot ? say("piece no shape") : ""}</div>
    </div>
  );
}

function Turning({ found }: { found: Of<Shown> }) {
  const ground = useRef<HTMLDivElement>(null);
  const [over, setOver] = useState<readonly string[]>([]);
  const [turned, setTurned] = useState(false);
  const view = viewOf(found.name, found.value);
  useEffect(() => {
    ground.current?.prepend(view.stage.element);
    return () => view.stage.element.remove();
  }, [view]);
  useEffect(() => {
    view.stage.onTurned = setTurned;
    view.stage.onOver = (body) => setOver(body ? strokeAt(body.name) : []);
    view.stage.onPick = (body) => picked(body);
    view.stage.onAim = (x, y, from) => {
      const now = tapping.value;
      if (now?.does === "side") aimed.value = faceAt(found.value.piece.joints, from, x, y, now.part);
    };
    view.stage.onPoint = (x, y, from) => pointed(found.value, x, y, from);
  }, [view, found]);
  useSignalEffect(() => show(view, found.value, over));
  useEffect(() => show(view, found.value, over), [view, found, over]);
  return (
    <div class="turning" data-tapping={tapping.value?.does}>
      <PictureBar />
      <div class="ground" ref={ground}>
        <Seeing view={view} turned={turned} />
      </div>
    </div>
  );
}

function picked(body: Body | undefined): void {
  if (!body) return;
  const now = tapping.value;
  if (now?.does === "paint" && body.isLink) void paintAt(body.name);
  else if (now?.does === "across" || now?.does === "between") void pickPart(partOf(body.ends[0] ?? ""));
}

function pointed(shown: Shown, x: number, y: number, from: Pose): boolean {
  const now = tapping.value;
  if (now?.does === "side") {
    const face = faceAt(shown.piece.joints, from, x, y, now.part);
    if (face) void pickSide(face);
    return true;
  }
  if (now?.does !== "tie" && now?.does !== "joint") return false;
  const joint = jointAt(shown.piece.joints, from, x, y);
  if (joint) void pickJoint(joint.label);
  return true;
}

/** Put what the reader has asked for into the picture. */
function show(view: View, shown: Shown, over: readonly string[]): void {
  const now = tapping.value;
  const at = moment.value;
  const [number, turn] = shown.piece.moments[at ?? -1] ?? [0, 0];
  const step = shown.piece.steps[number - 1];
  const picking = now?.does === "tie" || now?.does === "joint";
  const colours = now?.does === "paint" ? new Map([...over, ...brushed.value].map((link) => [link, hexOf(now.balloon)])) : new Map<string, string>();
  view.show({
    alt: say("piece alt", { name: Object.values(shown.piece.name)[0] ?? "" }),
    moment: at,
    lying: step?.turns[turn]?.seat.lying ?? false,
    person: overlays.value.has("dimensions") ? (Object.values(shown.person.tall)[0] ?? "") : null,
    labels: picking || overlays.value.has("labels"),
    lit: picking && now.does === "tie" && now.first ? [now.first, ...lit.value] : lit.value,
    meant: now ? [] : meantLinks(),
    colours,
    over: drawn(shown),
  });
}

function drawn(shown: Shown): (from: Pose) => SVGElement[] {
  const known = facts.value?.value.overlays;
  const on = overlays.value;
  const sides = tapping.value?.does === "side" ? { without: tapping.value.part, meant: aimed.value } : null;
  const faces = (from: Pose): SVGElement[] => (sides ? drawnFaces(shown.piece.joints, sides.meant, sides.without, from) : []);
  if (!known || on.size === 0) return faces;
  const wants = (overlay: Overlay): boolean => on.has(overlay);
  const blow = known.gusts[gust.value];
  const most = Math.max(...known.gusts.map(({ m_per_s }) => m_per_s), 1);
  const through = known.doors[door.value];
  return (from) => [
    ...faces(from),
    ...(wants("dimensions") ? dimensions(known.dimensions, from) : []),
    ...(wants("foot") ? foot(known, say("piece tips here"), from) : []),
    ...(wants("gust") && blow ? wind(blow.m_per_s / most, shown.piece.height_m, blow.speed, from) : []),
    ...(wants("door") && through ? doorway(through, from) : []),
    ...(wants("van") ? hold(known.van, say("piece show van"), from) : []),
  ];
}
