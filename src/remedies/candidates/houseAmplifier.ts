/** Too little level behind what divides a line: an amplifier before it, indoors, where nothing amplifies yet. */
import type { Finding } from "../../findings/finding.ts";
import type { Job } from "../../parts/trade.ts";
import { candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import { type Site, type Step, wayUp } from "../site.ts";
import { AMPLIFYING_JOBS, excessDb, isWeak } from "./levels.ts";
import { curePlaceOf } from "./places.ts";

/** What divides a line among rooms or floors. */
const DIVIDING: readonly Job[] = ["splitter", "tap", "riser plate"];

/** Gains of usual amplifiers for houses [dB]; common practice, no source. */
const GAIN = { least: 8, most: 30 } as const;

/** Further inside the limit than the limit itself [dB]. */
const SPARE_DB = 4;

/** An amplifier before the first part that divides the line, else right behind a hand-over point or modulator. */
export const houseAmplifier: Idea = (site, finding) => {
  const place = curePlaceOf(site, finding);
  if (!place || place.service === "satellite" || !isWeak(finding)) return [];
  const down = wayUp(site, [place.part.part.id, place.input], place.service).toReversed();
  const [source] = down;
  if (!source || down.some(({ record }) => AMPLIFYING_JOBS.includes(record.kind.trade.job))) return [];
  const at = placeFor(source, down);
  if (!at) return [];
  const gainDb = Math.min(
    GAIN.most,
    Math.max(GAIN.least, Math.ceil(mostMissingDb(site, finding) + SPARE_DB)),
  );
  return [
    candidate("house-amplifier", [at.id, at.port, gainDb], { db: gainDb, side: at.side }, (design) => {
      const d = draft(design);
      d.insert("amp-distribution", { gainDb }, [at.id, at.port]);
      return d.result();
    }),
  ];
};

type AmplifierPlace = { readonly id: string; readonly port: string; readonly side: "before" | "behind" };

function placeFor(source: Step, down: readonly Step[]): AmplifierPlace | undefined {
  const divider = down.find(({ record }) => DIVIDING.includes(record.kind.trade.job));
  if (divider?.in) return { id: divider.record.part.id, port: divider.in, side: "before" };
  if (source.record.kind.trade.job !== "signal source") return undefined;
  return { id: source.record.part.id, port: source.out, side: "behind" };
}

/** What the weakest place of the service lacks: one amplifier serves all of them [dB]. */
function mostMissingDb(site: Site, finding: Finding): number {
  const others = site.report.findings.filter(
    (f) => f.rule === finding.rule && f.at.side === "too little" && f.at.service === finding.at.service,
  );
  return Math.max(...[finding, ...others].map((f) => -excessDb(f)));
}
