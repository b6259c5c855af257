// Pictures without WebGL: balloons as shaded ovals, far ones first.
import { place } from "./camera";
import type { Page } from "./data";
import { mixed, PERSON_COLOUR, PICKED_COLOUR, type Frame, type Painter } from "./painter";

const CLEAR = 0.35; // how much is seen of what is seen through

export function flatPainter(page: Page): Painter {
  const canvas = document.createElement("canvas");
  const pen = canvas.getContext("2d");
  const colours = page.piece.balloons.map((balloon) => balloon.colour);

  function paint(frame: Frame): void {
    const dense = Math.min(window.devicePixelRatio || 1, 2);
    canvas.width = Math.round(frame.width * dense);
    canvas.height = Math.round(frame.height * dense);
    if (!pen) return;
    pen.setTransform(dense, 0, 0, dense, 0, 0);
    pen.clearRect(0, 0, frame.width, frame.height);
    const ovals = frame.bodies.flatMap((body, i) => {
      const look = frame.looks[i];
      if (look === "gone" || look === undefined) return [];
      const own = colours[body.balloon] ?? "#888888";
      const colour =
        look === "picked" ? PICKED_COLOUR : look === "done" || look === "clear" ? mixed(own, frame.ground.paper, frame.ground.pale) : own;
      return [{ from: body.first, to: body.second, middle: body.middle, radius: body.radius, colour, pale: look === "done" || look === "clear", fresh: look === "new", clear: look === "clear" }];
    });
    if (frame.person) {
      for (const part of page.person) {
        const middle = [0, 1, 2].map((i) => ((part.from[i] ?? 0) + (part.to[i] ?? 0)) / 2);
        ovals.push({
          from: part.from,
          to: part.to,
          middle: [middle[0] ?? 0, middle[1] ?? 0, middle[2] ?? 0],
          radius: part.radius_m,
          colour: PERSON_COLOUR,
          pale: true,
          fresh: false,
          clear: false,
        });
      }
    }
    const placed = ovals
      .map((oval) => ({ ...oval, spot: place(frame.from, oval.middle, frame.width, frame.height) }))
      .sort((a, b) => b.spot.depth - a.spot.depth);
    for (const oval of placed) {
      const one = place(frame.from, oval.from, frame.width, frame.height);
      const other = place(frame.from, oval.to, frame.width, frame.height);
      const radius = oval.radius * oval.spot.scale;
      const half = Math.max(Math.hypot(one.x - other.x, one.y - other.y) / 2, radius);
      pen.beginPath();
      pen.ellipse(oval.spot.x, oval.spot.y, half, radius, Math.atan2(other.y - one.y, other.x - one.x), 0, 2 * Math.PI);
      pen.globalAlpha = oval.clear ? CLEAR : 1;
      pen.fillStyle = oval.colour;
      pen.fill();
      pen.lineWidth = oval.fresh ? 2.5 : 1;
      pen.strokeStyle = mixed(oval.colour, "#000000", oval.pale ? 0.12 : 0.6);
      pen.stroke();
      pen.globalAlpha = 1;
      if (oval.pale) continue;
      pen.beginPath();
      pen.arc(oval.spot.x - radius * 0.3, oval.spot.y - radius * 0.35, radius * 0.18, 0, 2 * Math.PI);
      pen.fillStyle = "rgba(255,255,255,0.7)";
      pen.fill();
    }
  }
  return { canvas, kind: "flat", paint };
}
