/**
 * Every fault of practice in every example and every sound design, and whether one of the first three cures mends it
 * where it is. Prints what is not mended and the share of each sort; exits with 1 below the least share.
 * `npm run backward -- [DESIGN] [EVERY]`: designs whose name holds a text; every n-th fault only.
 */
import type { Design } from "../../src/design/design.ts";
import { EXAMPLES } from "../../src/design/examples.ts";
import { siteOf } from "../../src/remedies/site.ts";
import { cureOf, isCured, noticed, told } from "../remedies/backward.ts";
import { SOUND_DESIGNS } from "../remedies/soundDesigns.ts";

const LEAST_SHARE = 0.95;

const [wanted = "", every = "1"] = process.argv.slice(2);
const designs: readonly (readonly [string, () => Design])[] = [
  ...Object.entries(SOUND_DESIGNS),
  ...EXAMPLES.map((e) => [e.key, e.load] as const),
];

type Tally = { cured: number; all: number };
const bySort = new Map<string, Tally>();
const total: Tally = { cured: 0, all: 0 };

for (const [name, make] of designs.filter(([key]) => key.includes(wanted))) {
  const sound = siteOf(make());
  for (const { fault, site } of noticed(sound).filter((_, i) => i % Number(every) === 0)) {
    const outcome = cureOf(name, sound, fault, site);
    const tally = bySort.get(fault.type) ?? { cured: 0, all: 0 };
    bySort.set(fault.type, tally);
    for (const one of [tally, total]) {
      one.all++;
      if (isCured(outcome)) one.cured++;
    }
    if (!isCured(outcome)) process.stdout.write(`${told(outcome)}\n`);
  }
}

for (const [sort, { cured, all }] of bySort) process.stdout.write(`${sort}: ${cured} of ${all}\n`);
const share = total.cured / Math.max(1, total.all);
process.stdout.write(
  `Cured at the fault among the first three: ${total.cured} of ${total.all} (${(share * 100).toFixed(1)} %)\n`,
);
process.exitCode = share >= LEAST_SHARE ? 0 : 1;
