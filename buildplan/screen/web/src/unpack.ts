// What lies packed in the page (base64 of zlib, RFC 1950), so that it stays small in any number of languages.
import { strFromU8, unzlibSync } from "fflate";

/** The text of the block named, unpacked. */
export function unpacked(id: string): string {
  return unpack(document.getElementById(id)?.textContent ?? "");
}

export function unpack(packed: string): string {
  return strFromU8(unzlibSync(Uint8Array.from(atob(packed), (letter) => letter.charCodeAt(0))));
}
