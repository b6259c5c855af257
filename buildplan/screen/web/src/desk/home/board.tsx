// The board on which an outline is drawn, with a finger, a pen or a mouse.
import { useRef } from "preact/hooks";
import { Sign } from "../sign";
import { say } from "../words";
import { drawnPath, outlineOf, pathOf, type Spot, type Stroke } from "./outline";

const WIDE = 600;
const HIGH = 600;
const FLOOR = 560;

export interface Board {
  strokes: readonly Stroke[];
  change: (strokes: readonly Stroke[]) => void;
}

export function OutlineBoard({ strokes, change }: Board) {
  const drawing = useRef<Spot[] | null>(null);
  const where = (event: PointerEvent): Spot => {
    const box = (event.currentTarget as SVGSVGElement).getBoundingClientRect();
    return [((event.clientX - box.left) * WIDE) / box.width, ((event.clientY - box.top) * HIGH) / box.height];
  };
  const begin = (event: PointerEvent): void => {
    if (event.button !== 0) return;
    (event.currentTarget as SVGSVGElement).setPointerCapture(event.pointerId);
    drawing.current = [where(event)];
    change([...strokes, drawing.current]);
  };
  const go = (event: PointerEvent): void => {
    if (!drawing.current) return;
    drawing.current = [...drawing.current, where(event)];
    change([...strokes.slice(0, -1), drawing.current]);
  };
  const end = (): void => {
    const last = drawing.current;
    drawing.current = null;
    if (last && last.length < 2) change(strokes.slice(0, -1)); // a tap draws nothing
  };
  const outline = pathOf(outlineOf(strokes));
  return (
    <div class="board">
      <svg viewBox={`0 0 ${WIDE} ${HIGH}`} role="img" aria-label={say(outline ? "board drawn" : "board")} onPointerDown={begin} onPointerMove={go} onPointerUp={end} onPointerCancel={end}>
        <path class="floor" d={`M0 ${FLOOR}H${WIDE}`} />
        <path class="filled" d={outline} />
        <path class="drawn" d={drawnPath(strokes)} />
        {strokes.length === 0 && (
          <text x={WIDE / 2} y={HIGH / 2}>
            {say("draw here")}
          </text>
        )}
      </svg>
      <div class="row">
        <button type="button" disabled={strokes.length === 0} onClick={() => change(strokes.slice(0, -1))}>
          <Sign name="undo" />
          {say("take back stroke")}
        </button>
        <button type="button" disabled={strokes.length === 0} onClick={() => change([])}>
          <Sign name="close" />
          {say("wipe")}
        </button>
      </div>
    </div>
  );
}
