/** Gives the parts of every example and of every practice design their places anew: `npm run arrange-examples`. */
import { execFileSync } from "node:child_process";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import Elk from "elkjs/lib/elk.bundled.js";
import { readDesign } from "../../../src/design/file.ts";
import { arranged } from "../../../src/ui/canvas/arrangement.ts";

type DesignFile = { parts: { id: string; at: readonly [number, number] }[] };

const FOLDERS = ["src/design/examples/", "src/remedies/training/designs/"];

for (const folder of FOLDERS) {
  const place = new URL(`../../../${folder}`, import.meta.url);
  for (const name of readdirSync(place).filter((each) => each.endsWith(".json"))) {
    const path = new URL(name, place);
    const text = readFileSync(path, "utf8");
    const reading = readDesign(text);
    if (!reading.ok) throw new Error(`${name} can't be read: ${reading.problem}`);
    const places = await arranged(reading.design, new Elk());
    // The files are our own, and have just been checked.
    const file = JSON.parse(text) as DesignFile;
    for (const part of file.parts) part.at = places.get(part.id) ?? part.at;
    writeFileSync(path, JSON.stringify(file));
  }
}
execFileSync("npx", ["biome", "format", "--write", ...FOLDERS], { stdio: "inherit" });
