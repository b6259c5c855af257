import { render } from "preact";
import { listen } from "./events";
import { keepFocus } from "./focus";
import { takeDropped } from "./home/drop";
import { Shell } from "./shell";
import { place } from "./state";
import { placeOf } from "./route";
import { loadWords } from "./words";

document.documentElement.dataset.theme = "auto";
addEventListener("hashchange", () => (place.value = placeOf(location.hash)));
const ground = document.getElementById("desk") ?? document.body;
void loadWords()
  .catch(() => undefined) // without a server the page still says so, by its keys
  .then(() => {
    listen();
    takeDropped();
    keepFocus();
    render(<Shell />, ground);
  });
