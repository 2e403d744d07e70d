import type { Drive, PartRecord } from "../../evaluate/evaluation.ts";
import { spareNeededDb } from "../../rf/protection.ts";
import { isLive } from "../../signal/readout.ts";
import { type Rule, wireAt } from "../rule.ts";
import { partName, round1 } from "../words.ts";

/** An amplifier or converter driven past its rated output. */
export const overload: Rule = {
  id: "overload",
  title: "An amplifier is driven past its rated output",
  explain:
    "The rated output holds for two carriers. With more of them each must be lower, for their products fall on one another. " +
    "Every decibel too much makes the products two decibels worse against the carriers: more gain gives less reception. " +
    "Everything that comes in counts, phone masts too.",
  source:
    "Rated output by two carriers (EN 60728-3, as quoted); derating 7.5·log10(n − 1) for TV or 10·log10(n/2) for satellite IF, from trade appendices",
  check: ({ record }) => {
    const drive = hardest(record.drives);
    if (!drive || drive.levelDbuv <= drive.allowedDbuv) return [];
    const over = drive.levelDbuv - drive.allowedDbuv;
    const kills = needOf(record, drive) > 3;
    return [
      {
        severity: kills ? "error" : "warning",
        parts: [record.part.id],
        wires: drive.port.startsWith("#") ? [] : wireAt(record, drive.port),
        message:
          `${partName(record.part.id)} gives ${round1(drive.levelDbuv)} dBµV for each of ${Math.round(drive.carriers)} carriers, ` +
          `${round1(over)} dB over its limit: their products lie only ${round1(drive.ratioDb)} dB below them.`,
        value: drive.levelDbuv,
        limit: drive.allowedDbuv,
        unit: "dBµV",
        source: overload.source,
        cure: `Put ${Math.ceil(over)} dB of attenuation before it or turn its gain down, or keep what is not wanted out with a filter.`,
      },
    ];
  },
};

function hardest(drives: readonly Drive[]): Drive | undefined {
  return drives.reduce<Drive | undefined>(
    (worst, d) => (worst && worst.levelDbuv - worst.allowedDbuv >= d.levelDbuv - d.allowedDbuv ? worst : d),
    undefined,
  );
}

/** Spare C/N that the most demanding live carrier on the driven port must have to survive the products [dB]. */
function needOf(record: PartRecord, drive: Drive): number {
  let requiredDb = 0;
  for (const band of record.outputs[drive.port]?.bands ?? [])
    for (let i = 0; i < band.level.length; i++)
      if (isLive(band, i)) requiredDb = Math.max(requiredDb, band.grid.required[i] ?? 0);
  return spareNeededDb({ ciDb: drive.ratioDb, requiredDb });
}
