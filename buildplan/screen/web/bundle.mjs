// Makes ../bundle from the sources: the companion (page) and the desk, each a script, its style and
// the licences of what is built into it.
import { build } from "esbuild";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";

const out = process.argv[2] ?? "../bundle";
mkdirSync(out, { recursive: true });

/** The packages that a bundle was made of, by name. */
function within(metafile) {
  const names = Object.keys(metafile.inputs)
    .map((file) => /node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(file)?.[1])
    .filter((name) => name !== undefined);
  return [...new Set(names)].sort();
}

/** What is built in, and the licence that it is used under: MIT, or MIT by choice. */
function told(name) {
  const folder = `node_modules/${name}`;
  const { version, license } = JSON.parse(readFileSync(`${folder}/package.json`, "utf8"));
  if (!/\bMIT\b/.test(license)) throw new Error(`${name} is under ${license}: may it be built in?`);
  const file = existsSync(`${folder}/LICENSE-MIT`) ? "LICENSE-MIT" : "LICENSE";
  return `${name} ${version} (MIT)\n\n${readFileSync(`${folder}/${file}`, "utf8").trim()}\n`;
}

async function make(script, style, name, licences) {
  const { metafile } = await build({
    entryPoints: [script],
    bundle: true,
    minify: true,
    format: "iife",
    target: "es2022",
    charset: "ascii",
    legalComments: "none",
    metafile: true,
    outfile: `${out}/${name}.js`,
  });
  await build({ entryPoints: [style], bundle: true, minify: true, outfile: `${out}/${name}.css` });
  writeFileSync(`${out}/${licences}`, within(metafile).map(told).join("\n----\n\n"));
}

await make("src/main.ts", "src/page.css", "page", "LICENCES.txt");
await make("src/desk/main.tsx", "src/desk/desk.css", "desk", "DESK_LICENCES.txt");
