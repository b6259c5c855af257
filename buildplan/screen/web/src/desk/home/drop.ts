// A picture dropped anywhere on the page begins a new design.
import { notice } from "../state";
import { say } from "../words";
import { dropped } from "./new";

const IS_PICTURE = /^image\/(png|jpeg|svg\+xml)$/;

export function takeDropped(): void {
  addEventListener("dragover", (event) => event.preventDefault());
  addEventListener("drop", (event) => {
    event.preventDefault(); // else the browser goes to it
    const file = event.dataTransfer?.files[0];
    if (!file) return;
    if (!IS_PICTURE.test(file.type)) {
      notice(say("no picture", { file: file.name }), true);
      return;
    }
    dropped.value = file;
    location.hash = "#new";
  });
}
