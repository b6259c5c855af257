import { App } from "./app";
import type { Page } from "./data";
import { unpacked } from "./unpack";

const data = document.getElementById("data")?.textContent ?? "";
new App({ ...JSON.parse(data), piece: JSON.parse(unpacked("piece")) } as Page);
