// Pictures without WebGL: balloons as shaded ovals, far ones first.
import { place } from "./camera";
import type { Body, Look } from "./bodies";
import type { Point } from "./data";
import { mixed, PERSON_COLOUR, PICKED_COLOUR, round, type Frame, type Painter, type Subject } from "./painter";

const SEEN_THROUGH = 0.22; // how much is seen of what stands before new work

type Pen = CanvasRenderingContext2D;

export function flatPainter(first: Subject): Painter {
  const canvas = document.createElement("canvas");
  const pen = canvas.getContext("2d");
  let subject = first;

  function paint(frame: Frame): void {
    const dense = Math.min(window.devicePixelRatio || 1, 2);
    canvas.width = Math.round(frame.from.width * dense);
    canvas.height = Math.round(frame.from.height * dense);
    if (!pen) return;
    pen.setTransform(dense, 0, 0, dense, 0, 0);
    pen.clearRect(0, 0, frame.from.width, frame.from.height);
    const far = frame.bodies
      .map((body, i) => ({ body, look: frame.looks[i] ?? "gone", depth: depthOf(frame, body.middle) }))
      .filter((each) => each.look !== "gone")
      .sort((a, b) => b.depth - a.depth);
    const { person: beside, piece } = subject;
    const person = frame.person ? depthOf(frame, [beside.foot_x, beside.height_m / 2, 0]) : -1;
    let due = frame.person;
    for (const { body, look, depth } of far) {
      if (due && depth < person) {
        figure(pen, subject, frame);
        due = false;
      }
      oval(pen, frame, body, look, frame.colours?.get(body) ?? piece.balloons[body.balloon]?.colour ?? "#888888");
    }
    if (due) figure(pen, subject, frame);
  }
  const take = (next: Subject): void => {
    subject = next;
  };
  return { canvas, kind: "flat", paint, take };
}

function depthOf(frame: Frame, at: Point): number {
  return place(frame.from, at).depth;
}

function oval(pen: Pen, frame: Frame, body: Body, look: Look, own: string): void {
  const [middle, one, other] = [body.middle, body.first, body.second].map((at) => place(frame.from, at));
  if (!middle || !one || !other) return;
  const pale = look === "done" || look === "clear";
  const colour = look === "picked" ? PICKED_COLOUR : pale ? mixed(own, frame.ground.paper, frame.ground.pale) : own;
  const radius = body.radius * middle.scale;
  const half = Math.max(Math.hypot(one.x - other.x, one.y - other.y) / 2, radius);
  pen.beginPath();
  pen.ellipse(middle.x, middle.y, half, radius, Math.atan2(other.y - one.y, other.x - one.x), 0, 2 * Math.PI);
  pen.globalAlpha = look === "clear" ? SEEN_THROUGH : 1;
  pen.fillStyle = colour;
  pen.fill();
  pen.lineWidth = look === "new" || look === "picked" ? 2.5 : 1;
  pen.strokeStyle = mixed(colour, "#000000", pale ? 0.12 : 0.6);
  pen.stroke();
  pen.globalAlpha = 1;
  if (pale) return;
  pen.beginPath();
  pen.arc(middle.x - radius * 0.3, middle.y - radius * 0.35, radius * 0.18, 0, 2 * Math.PI);
  pen.fillStyle = "rgba(255,255,255,0.7)";
  pen.fill();
}

/** Who stands beside the piece, turned to the eye. */
function figure(pen: Pen, subject: Subject, frame: Frame): void {
  const { foot_x, body, head } = subject.person;
  const turn = round(frame.from);
  const at = (x: number, y: number): [number, number] => {
    const spot = place(frame.from, [foot_x + x * Math.cos(turn), y, -x * Math.sin(turn)]);
    return [spot.x, spot.y];
  };
  pen.fillStyle = PERSON_COLOUR;
  pen.beginPath();
  pen.moveTo(...at(...body.start));
  for (const [ax, ay, bx, by, x, y] of body.pieces) pen.bezierCurveTo(...at(ax, ay), ...at(bx, by), ...at(x, y));
  pen.fill();
  const [x, y] = at(head[0], head[1]);
  const [, top] = at(head[0], head[1] + head[2]);
  pen.beginPath();
  pen.arc(x, y, Math.abs(y - top), 0, 2 * Math.PI);
  pen.fill();
}
