// Our own signs, drawn in a square of 24, beside the words that they stand for.
import { s } from "./dom";

const SIGNS = {
  step: "M4 6h3v12M11 8h9M11 12h9M11 16h6",
  list: "M4 6l1.5 1.5L8 5M4 12l1.5 1.5L8 11M4 18l1.5 1.5L8 17M12 6h8M12 12h8M12 18h8",
  find: "M12 5a7 7 0 1 0 0 14a7 7 0 1 0 0-14M12 2v5M12 17v5M2 12h5M17 12h5",
  film: "M8 5v14l11-7z",
  burst: "M12 2l2 5l5-2l-2 5l5 2l-5 2l2 5l-5-2l-2 5l-2-5l-5 2l2-5l-5-2l5-2l-2-5l5 2z",
  more: "M4 7h16M4 12h16M4 17h16",
  caution: "M12 3L2 20h20zM12 10v5M12 17.3v.4",
  labels: "M4 12V4h8l8 8l-8 8zM8 7.9v.2",
  back: "M14 6l-6 6l6 6",
  next: "M10 6l6 6l-6 6",
  done: "M4 12.5l5 5L20 6.5",
} as const;

export function sign(name: keyof typeof SIGNS): SVGElement {
  const made = s("svg", { class: "sign", viewBox: "0 0 24 24", "aria-hidden": "true" });
  made.append(s("path", { d: SIGNS[name] }));
  return made;
}
