// A balloon has burst: which one it is, and how to put a new one in, act by act.
import type { App } from "../app";
import type { Body } from "../bodies";
import type { Act, Balloon, Piece, Point } from "../data";
import { h } from "../dom";
import { frame } from "../frame";
import { reference } from "../refer";

const LOCK = "lock "; // before the joint of a lock whose round burst
const ROUND_IT = 1.3; // metres seen across, at most

/** What burst: a link balloon, or a round of the lock at a joint. */
interface Burst {
  name: string;
  joints: readonly string[];
  balloon: Balloon | undefined;
  acts: readonly { act: Act; words: string }[];
}

export function burst(app: App): HTMLElement {
  const { words, page } = app;
  const choose = h(
    "select",
    { id: "burst" },
    h("option", { value: "" }, words.say("choose balloon")),
    ...page.piece.links.map((link) => h("option", { value: link.id }, link.id)),
    ...page.piece.locks.map((lock) => h("option", { value: LOCK + lock.joint }, words.say("lock at", { joint: lock.joint }))),
  );
  const how = h("p", {}, words.say("burst how"));
  const told = h("div", { class: "found", "aria-live": "polite" });
  const pick = (name: string) => {
    const gone = burstOf(app, name);
    if (app.at.what !== (gone?.name ?? "")) app.settle(gone?.name ?? "");
    choose.value = gone?.name ?? "";
    how.hidden = gone !== undefined;
    told.replaceChildren(...(gone ? repair(app, gone) : []));
    picture(app, gone, 0);
  };
  choose.addEventListener("change", () => pick(choose.value));
  app.stage.onPick = (body) => body && pick(body.isLink ? body.name : LOCK + body.name);
  const title = h("h1", {}, words.say("screen burst"));
  app.focus(title);
  pick(app.at.what);
  return h(
    "div",
    { class: "columns" },
    frame(app),
    h("div", { class: "told" }, title, how, h("p", {}, h("label", { for: "burst" }, words.say("balloon")), choose), told),
  );
}

function burstOf(app: App, name: string): Burst | undefined {
  const { piece } = app.page;
  const kind = (key: string) => piece.balloons.find((each) => each.key === key);
  const link = app.links.get(name);
  if (link) return { name, joints: [link.start, link.finish], balloon: kind(link.balloon), acts: linkActs(app, name) };
  const lock = piece.locks.find((each) => LOCK + each.joint === name);
  return lock && { name, joints: lock.joint.split("+"), balloon: kind(lock.balloon), acts: lockActs(app, lock.joint, lock.balloon) };
}

function lockActs(app: App, joint: string, key: string): Burst["acts"] {
  const { words } = app;
  return [
    { act: { act: "open", joint }, words: words.say("open burst lock", { joint }) },
    { act: { act: "size", joint }, words: words.say("size pair", { balloon: app.balloonWords(key) }) },
    { act: { act: "lock", joint }, words: words.say("act lock", { joint }) },
  ];
}

function linkActs(app: App, name: string): Burst["acts"] {
  const { words, page } = app;
  const balloon = app.balloonWords(app.links.get(name)?.balloon ?? "");
  return (page.piece.repairs[name] ?? []).map((act) => {
    const alone = (act.act === "undo" || act.act === "tie") && !act.link ? " alone" : "";
    const own = act.own_end && act.act !== "close" ? ` ${act.own_end}` : "";
    const other = act.link ? ` to ${act.end}` : "";
    return { act, words: words.say(`act ${act.act}${own}${other}${alone}`, { joint: act.joint, link: act.link ?? "", balloon }) };
  });
}

function repair(app: App, gone: Burst): HTMLElement[] {
  const { words } = app;
  const { balloon } = gone;
  const list = h("ol", { class: "acts" });
  const show = (chosen: number) => {
    list.querySelectorAll("button").forEach((button, at) => button.setAttribute("aria-pressed", String(at === chosen)));
    picture(app, gone, chosen);
  };
  list.append(
    ...gone.acts.map((each, i) =>
      h(
        "li",
        {},
        h(
          "button",
          { type: "button", class: "line", "aria-pressed": String(i === 0), onclick: () => show(i) },
          h("span", { class: "number" }, String(i + 1)),
          h("span", {}, each.words),
        ),
      ),
    ),
  );
  const joints = gone.joints.flatMap((joint, i) => [i ? " · " : null, reference(app, { screen: "find", what: joint }, joint)]);
  return [
    h("h2", {}, gone.name.startsWith(LOCK) ? words.say("lock at", { joint: gone.name.slice(LOCK.length) }) : gone.name, h("small", {}, ...joints)),
    h("p", {}, balloon ? words.say("it is", { balloon: app.balloonWords(balloon.key), letter: balloon.letter, spare: balloon.spare }) : ""),
    h("p", { class: "caution" }, words.say("burst caution")),
    list,
  ];
}

function picture(app: App, gone: Burst | undefined, chosen: number): void {
  const { page, words } = app;
  const moment = page.piece.moments.length;
  if (!gone) {
    app.stage.show({
      seat: page.whole,
      shown: { moment, isNew: () => false, picked: new Set(), near: null, inColour: true },
      tags: [],
      ways: [],
      person: null,
      alt: words.say("finished picture", { piece: words.of(page.piece.name) }),
    });
    return;
  }
  const now = gone.acts[chosen]?.act;
  const about = app.joints.get(now?.joint.split("+")[0] || gone.joints[0] || "")?.at ?? page.whole.about;
  const near = new Set(gone.joints.flatMap((joint) => app.joints.get(joint)?.links ?? []));
  const isGone = (body: Body) => (body.isLink ? body.name : LOCK + body.name) === gone.name;
  const across = Math.min(page.whole.across_m, ROUND_IT);
  app.stage.show({
    seat: { ...page.whole, about, across_m: across, to_eye: facing(about, page.whole.about, page.piece) },
    shown: {
      moment,
      isNew: (body) => (now?.link ? near.has(now.link) && body.name === now.link : near.has(body.name)) || (!body.isLink && body.name === now?.joint),
      picked: new Set(app.bodies.filter(isGone)),
      near: { about, across, joints: new Set(gone.joints) },
    },
    tags: gone.joints.map((joint) => app.tag(joint)),
    ways: [],
    person: null,
    alt: words.say("burst picture", { balloon: gone.name }),
  });
}

/** From outside the piece: straight before the front or back of a flat one, all round a round one. */
function facing(at: Point, middle: Point, piece: Piece): Point {
  const roundness = Math.min(1, piece.depth_m / Math.max(piece.width_m, 0.1));
  const out = (axis: 0 | 1 | 2, extent: number) => (2 * (at[axis] - middle[axis])) / Math.max(extent, 0.1);
  const side = at[2] - middle[2] < -0.02 ? -1 : 1;
  const [x, y, z] = [out(0, piece.width_m), out(1, piece.height_m), out(2, piece.depth_m)];
  return [x * roundness, 0.6 * y * roundness, z * roundness + side * (1 - roundness) || 1];
}
