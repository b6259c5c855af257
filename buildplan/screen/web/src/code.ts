// A text as a QR code (ISO/IEC 18004).
import encodeQR from "qr";
import { s } from "./dom";

const QUIET = 4; // modules that the standard leaves free all round

/** The dark modules, as a path in a square of `size` modules. */
export function modulesOf(text: string): { path: string; size: number } {
  const modules = encodeQR(text, "raw", { ecc: "low", encoding: "byte", border: QUIET });
  const path = modules.flatMap((row, y) => row.map((dark, x) => (dark ? `M${x} ${y}h1v1h-1z` : ""))).join("");
  return { path, size: modules.length };
}

export function codePicture(text: string, alt: string): SVGElement {
  const { path, size } = modulesOf(text);
  const picture = s("svg", { class: "qr", viewBox: `0 0 ${size} ${size}`, role: "img", "aria-label": alt });
  picture.append(s("rect", { width: size, height: size, fill: "#fff" }), s("path", { d: path, fill: "#000", "shape-rendering": "crispEdges" }));
  return picture;
}
