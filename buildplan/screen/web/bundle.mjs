// Makes ../bundle from the sources: page.js, page.css and the licences of what is in page.js.
import { build } from "esbuild";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";

const out = process.argv[2] ?? "../bundle";
mkdirSync(out, { recursive: true });
await build({
  entryPoints: ["src/main.ts"],
  bundle: true,
  minify: true,
  format: "iife",
  target: "es2022",
  charset: "ascii",
  legalComments: "none",
  outfile: `${out}/page.js`,
});
await build({ entryPoints: ["src/page.css"], minify: true, outfile: `${out}/page.css` });

// what is built in, and the licence that it is used under
const WITHIN = [
  ["three", "MIT", "LICENSE"],
  ["qr", "MIT", "LICENSE-MIT"],
];
const told = WITHIN.map(([name, licence, file]) => {
  const { version } = JSON.parse(readFileSync(`node_modules/${name}/package.json`, "utf8"));
  return `${name} ${version} (${licence})\n\n${readFileSync(`node_modules/${name}/${file}`, "utf8").trim()}\n`;
});
writeFileSync(`${out}/LICENCES.txt`, told.join("\n----\n\n"));
