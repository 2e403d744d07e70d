/**
 * Every fault of practice in every sound design and every example in which all receivers work: whether one of the first
 * two causes names a part that it is at, and whether one of the first three cures mends it there. Prints what is not
 * named or not mended, and the share of each sort; exits with 1 below the least share.
 * `npm run backward -- [DESIGN] [EVERY]`: designs whose name holds a text; every n-th fault only.
 */
import type { Design } from "../../src/design/design.ts";
import { EXAMPLES } from "../../src/design/examples.ts";
import { siteOf } from "../../src/remedies/site.ts";
import { cureOf, isCured, isNamed, isSound, noticed, told } from "../remedies/backward.ts";
import { SOUND_DESIGNS } from "../remedies/soundDesigns.ts";

const LEAST_SHARE = 0.95;

const [wanted = "", every = "1"] = process.argv.slice(2);
const designs: readonly (readonly [string, () => Design])[] = [
  ...Object.entries(SOUND_DESIGNS),
  ...EXAMPLES.map((e) => [e.key, e.load] as const),
];

type Tally = { named: number; cured: number; all: number };
const bySort = new Map<string, Tally>();
const total: Tally = { named: 0, cured: 0, all: 0 };

for (const [name, make] of designs.filter(([key]) => key.includes(wanted))) {
  const sound = siteOf(make());
  if (!isSound(sound)) continue;
  for (const { fault, site } of noticed(sound).filter((_, i) => i % Number(every) === 0)) {
    const outcome = cureOf(name, sound, fault, site);
    const [named, cured] = [isNamed(sound, fault, site), isCured(outcome)];
    const tally = bySort.get(fault.type) ?? { named: 0, cured: 0, all: 0 };
    bySort.set(fault.type, tally);
    for (const one of [tally, total]) {
      one.all++;
      one.named += Number(named);
      one.cured += Number(cured);
    }
    if (!named) process.stdout.write(`${name}: ${fault.id}: not named\n`);
    if (!cured) process.stdout.write(`${told(outcome)}\n`);
  }
}

for (const [sort, { named, cured, all }] of bySort)
  process.stdout.write(`${sort}: ${named} named and ${cured} cured of ${all}\n`);
const shares = [total.named, total.cured].map((count) => count / Math.max(1, total.all));
const [named = 0, cured = 0] = shares.map((share) => (share * 100).toFixed(1));
process.stdout.write(
  `Named among the first two causes: ${named} %; cured at the fault among the first three: ${cured} % of ${total.all}\n`,
);
process.exitCode = shares.every((share) => share >= LEAST_SHARE) ? 0 : 1;
