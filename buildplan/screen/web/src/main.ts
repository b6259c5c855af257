import { App } from "./app";
import type { Page } from "./data";

const data = document.getElementById("data")?.textContent ?? "";
new App(JSON.parse(data) as Page);
