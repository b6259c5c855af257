// A balloon has burst: which one it is, and how to put a new one in, act by act.
import type { App } from "../app";
import type { Body } from "../bodies";
import type { Act } from "../data";
import { h } from "../dom";

let gone = ""; // id of the link, or "lock JOINT"
let act = 0;

export function burst(app: App): HTMLElement {
  const { words, page } = app;
  const choose = h(
    "select",
    { id: "burst" },
    h("option", { value: "" }, words.say("choose balloon")),
    ...page.piece.links.map((link) => h("option", { value: link.id }, link.id)),
    ...page.piece.locks.map((lock) => h("option", { value: `lock ${lock.joint}` }, words.say("lock at", { joint: lock.joint }))),
  );
  const how = h("p", {}, words.say("burst how"));
  const told = h("div", { class: "found", "aria-live": "polite" });
  const pick = (name: string) => {
    gone = name;
    act = 0;
    choose.value = name;
    how.hidden = name !== "";
    told.replaceChildren(...repair(app));
    picture(app);
  };
  choose.addEventListener("change", () => pick(choose.value));
  app.stage.onPick = (body) => body && pick(body.isLink ? body.name : `lock ${body.name}`);
  const title = h("h1", {}, words.say("screen burst"));
  app.focus(title);
  pick(gone);
  return h(
    "div",
    { class: "columns" },
    h("div", { class: "picture" }, app.stage.element),
    h("div", { class: "told" }, title, how, h("p", {}, h("label", { for: "burst" }, words.say("balloon")), choose), told),
  );
}

function acts(app: App): { act: Act; words: string }[] {
  const { words, page } = app;
  if (gone.startsWith("lock ")) {
    const joint = gone.slice(5);
    const balloon = app.balloonWords(page.piece.locks.find((lock) => lock.joint === joint)?.balloon ?? "");
    return [
      { act: { act: "open", joint }, words: words.say("open burst lock", { joint }) },
      { act: { act: "size", joint }, words: words.say("size pair", { balloon }) },
      { act: { act: "lock", joint }, words: words.say("act lock", { joint }) },
    ];
  }
  const balloon = app.balloonWords(app.links.get(gone)?.balloon ?? "");
  return (page.piece.repairs[gone] ?? []).map((each) => {
    const alone = (each.act === "undo" || each.act === "tie") && !each.link ? " alone" : "";
    const own = each.own_end ? ` ${each.own_end}` : "";
    const other = each.link ? ` to ${each.end}` : "";
    return {
      act: each,
      words: words.say(`act ${each.act}${each.act === "close" ? "" : own}${other}${alone}`, { joint: each.joint, link: each.link ?? "", balloon }),
    };
  });
}

function repair(app: App): HTMLElement[] {
  const { words, page } = app;
  if (!gone) return [];
  const key = gone.startsWith("lock ") ? page.piece.locks.find((lock) => `lock ${lock.joint}` === gone)?.balloon : app.links.get(gone)?.balloon;
  const balloon = page.piece.balloons.find((each) => each.key === key);
  const list = h("ol", { class: "acts" });
  list.append(
    ...acts(app).map((each, i) =>
      h(
        "li",
        {},
        h(
          "button",
          {
            type: "button",
            class: "line",
            "aria-pressed": String(i === act),
            onclick: () => {
              act = i;
              list.querySelectorAll("button").forEach((button, at) => button.setAttribute("aria-pressed", String(at === i)));
              picture(app);
            },
          },
          h("span", { class: "number" }, String(i + 1)),
          h("span", {}, each.words),
        ),
      ),
    ),
  );
  return [
    h("h2", {}, gone.startsWith("lock ") ? words.say("lock at", { joint: gone.slice(5) }) : gone),
    h("p", {}, balloon ? words.say("it is", { balloon: app.balloonWords(balloon.key), letter: balloon.letter, spare: balloon.spare }) : ""),
    h("p", { class: "caution" }, words.say("burst caution")),
    list,
  ];
}

function picture(app: App): void {
  const { page, words } = app;
  const link = app.links.get(gone);
  const joints = link ? [link.start, link.finish] : gone ? [gone.slice(5).split("+")[0] ?? ""] : [];
  const now = gone ? acts(app)[act]?.act : undefined;
  const near = new Set(joints.flatMap((joint) => app.joints.get(joint)?.links ?? []));
  const burstBody = (body: Body) => (body.isLink ? body.name === gone : `lock ${body.name}` === gone);
  const about = app.joints.get(now?.joint.split("+")[0] || joints[0] || "")?.at;
  const touching = [...near].flatMap((id) => (id === now?.link ? [id] : []));
  const seat = about ? { ...page.whole, about, across_m: Math.min(page.whole.across_m, 1.3), ...facing(about, page.whole.about) } : page.whole;
  app.stage.show({
    seat,
    shown: {
      moment: page.piece.moments.length,
      isNew: (body) => gone !== "" && (touching.includes(body.name) || (!body.isLink && body.name === now?.joint) || (!now?.link && near.has(body.name))),
      picked: new Set(app.bodies.filter((body) => burstBody(body))),
      near: about ? { about, across: seat.across_m, joints: new Set(joints) } : null,
      inColour: !about,
    },
    tags: joints.map((joint) => app.tag(joint)),
    ways: [],
    person: false,
    alt: gone ? words.say("burst picture", { balloon: gone }) : words.say("finished picture", { piece: words.of(page.piece.name) }),
  });
}

/** From outside the piece, looking at it from before its front or its back. */
function facing(at: readonly number[], middle: readonly number[]): { to_eye: readonly [number, number, number] } {
  const [x, y, z] = [0, 1, 2].map((i) => (at[i] ?? 0) - (middle[i] ?? 0));
  return { to_eye: [(x ?? 0) * 0.4, (y ?? 0) * 0.3, (z ?? 0) < -0.02 ? -1 : 1] };
}
