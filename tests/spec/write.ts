/** Writes the tables of rules: `npm run tables`. */
import { writeFileSync } from "node:fs";
import { ruleTables } from "./tables.ts";

for (const { path, text } of ruleTables()) writeFileSync(new URL(`../../${path}`, import.meta.url), text);
