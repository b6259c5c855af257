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

const within = ["three", "qrcode-generator"].map((name) => {
  const told = JSON.parse(readFileSync(`node_modules/${name}/package.json`, "utf8"));
  const file = ["LICENSE", "LICENSE.md", "LICENSE.txt"].find((each) => {
    try {
      readFileSync(`node_modules/${name}/${each}`);
      return true;
    } catch {
      return false;
    }
  });
  const text = file ? readFileSync(`node_modules/${name}/${file}`, "utf8") : readFileSync(`licences/${name}.txt`, "utf8");
  return `${name} ${told.version} (${told.license})\n\n${text.trim()}\n`;
});
writeFileSync(`${out}/LICENCES.txt`, within.join("\n----\n\n"));
