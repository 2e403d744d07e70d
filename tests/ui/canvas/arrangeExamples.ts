/** Gives the parts of every example their places anew: `npm run arrange-examples`. */
import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import Elk from "elkjs/lib/elk.bundled.js";
import { EXAMPLES } from "../../../src/design/examples.ts";
import { arranged } from "../../../src/ui/canvas/arrangement.ts";

type ExampleFile = { parts: { id: string; at: readonly [number, number] }[] };

const folder = new URL("../../../src/design/examples/", import.meta.url);
for (const { key, load } of EXAMPLES) {
  const path = new URL(`${key}.json`, folder);
  // The examples are files of our own, checked whenever they are loaded.
  const file = JSON.parse(readFileSync(path, "utf8")) as ExampleFile;
  const places = await arranged(load(), new Elk());
  for (const part of file.parts) part.at = places.get(part.id) ?? part.at;
  writeFileSync(path, JSON.stringify(file));
}
execFileSync("npx", ["biome", "format", "--write", "src/design/examples"], { stdio: "inherit" });
