import type { Drive, PartRecord } from "../../evaluate/evaluation.ts";
import { markCarriers, pictureOf, spectrumAt, spotOf } from "../../sentences/explain/picture.ts";
import { capital, plainName } from "../../sentences/explain/plainWords.ts";
import { carriers, list, partName, round1 } from "../../sentences/phrases.ts";
import { type Service, WANTED_SERVICES } from "../../signal/carrier.ts";
import { cnDb, isLive, marginDb } from "../../signal/readout.ts";
import { plural } from "../../words/plural.ts";
import { type SpokenRule, wireAt } from "../rule.ts";

/** An amplifier or converter driven past its rated output. */
export const overload: SpokenRule = {
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
    const drowned = drownedIn(record);
    const lost = drowned.reduce((sum, [, n]) => sum + n, 0);
    const which = list(drowned.map(([service, n]) => carriers(n, service)));
    const toll = plural(lost, {
      zero: "",
      one: `, and ${which} is lost in them`,
      other: `, and ${which} are lost in them`,
    });
    const name = partName(record.part.id);
    const [level, beyond, below] = [drive.levelDbuv, over, drive.ratioDb].map(round1);
    return [
      {
        severity: lost > 0 ? "error" : "warning",
        parts: [record.part.id],
        wires: drive.port.startsWith("#") ? [] : wireAt(record, drive.port),
        message: plural(Math.round(drive.carriers), {
          one: `${name} gives ${level} dBµV for one strong carrier, ${beyond} dB over its limit: the products with weaker ones lie only ${below} dB below it${toll}.`,
          other: (n) =>
            `${name} gives ${level} dBµV for each of ${n} carriers, ${beyond} dB over its limit: their products lie only ${below} dB below them${toll}.`,
        }),
        value: drive.levelDbuv,
        limit: drive.allowedDbuv,
        unit: "dBµV",
        source: overload.source,
        port: drive.port,
        cure: `Put ${Math.ceil(over)} dB of attenuation before it or turn its gain down, or keep what is not wanted out with a filter.`,
      },
    ];
  },
  explanation: {
    severities: ["error", "warning"],
    customer: (facts) =>
      `${capital(plainName(facts, facts.finding.parts[0]))} gets more signal than it can handle and distorts it, ` +
      `${facts.finding.severity === "error" ? "which costs channels" : "which leaves less in reserve"} although there is plenty of signal.`,
    trade: ({ finding, record }) => {
      const drive = hardest(record?.drives ?? []);
      const n = Math.round(drive?.carriers ?? 0);
      const name = partName(finding.parts[0] ?? "");
      const [level, allowed, over] = [
        finding.value ?? 0,
        finding.limit ?? 0,
        (finding.value ?? 0) - (finding.limit ?? 0),
      ].map(round1);
      const inAll = `${round1(drive?.totalDbuv ?? 0)} dBµV in all`;
      const off = drive?.rule === "power" ? `10·log10(${n}/2)` : `7.5·log10(${n} − 1)`;
      const puts = plural(n, {
        one: `${name} puts out one carrier of ${level} dBµV that outweighs the rest, ${inAll}. `,
        other: (count) => `${name} puts out ${count} carriers of ${level} dBµV, ${inAll}. `,
      });
      const rated =
        n > 2
          ? `Its rated output, less ${off} for that many carriers, allows ${allowed} dBµV each: ${over} dB too much. `
          : `Its rated output is meant for two carriers and allows ${allowed} dBµV each: ${over} dB too much. `;
      return (
        puts +
        rated +
        `Third-order products fall on the carriers, now ${round1(drive?.ratioDb ?? 0)} dB below them, and every further decibel costs two.`
      );
    },
    measure: ({ finding, record }) => {
      const drive = hardest(record?.drives ?? []);
      return (
        `Level meter at the output of ${partName(finding.parts[0] ?? "")}: about ${round1(finding.value ?? 0)} dBµV on the strong carriers, and free channels between them lie only ` +
        `${round1(drive?.ratioDb ?? 0)} dB lower. Proof: put 6 dB of attenuation before the input. The level falls by 6 dB, but the MER rises.`
      );
    },
    neighbours: ["level-limits", "low-carrier-to-noise", "receiver-misses"],
    picture: (facts) => {
      const port = outputOf(facts.record, facts.finding.at.port);
      const spot = port === undefined ? null : spotOf(facts, port);
      if (!spot) return null;
      const label = `${round1(facts.finding.limit ?? 0)} dBµV allowed`;
      const marks = markCarriers(
        spectrumAt(facts, spot),
        (band, i) => isLive(band, i) && (band.level[i] ?? 0) > (facts.finding.limit ?? 0),
        {
          kind: "strong",
          label,
          ...(facts.finding.limit === undefined ? {} : { levelDbuv: facts.finding.limit }),
        },
      );
      return pictureOf(facts, spot, marks);
    },
  },
};

function hardest(drives: readonly Drive[]): Drive | undefined {
  return drives.reduce<Drive | undefined>(
    (worst, d) => (worst && worst.levelDbuv - worst.allowedDbuv >= d.levelDbuv - d.allowedDbuv ? worst : d),
    undefined,
  );
}

/** The driven output; behind an inner stage the first output that is joined. */
function outputOf(record: PartRecord | undefined, port: string | undefined): string | undefined {
  if (!port?.startsWith("#")) return port;
  return record?.ports.find((p) => p.side === "out" && record.joined[p.id])?.id;
}

/** Wanted carriers that leave the part with enough C/N, but too little against what disturbs them, by service. */
function drownedIn(record: PartRecord): [Service, number][] {
  const drowned = new Map<Service, Set<string>>();
  for (const { bands } of Object.values(record.outputs))
    for (const band of bands) {
      const { service, key } = band.origin;
      if (!WANTED_SERVICES.some((s) => s === service)) continue;
      for (let i = 0; i < band.level.length; i++) {
        if (!isLive(band, i) || marginDb(band, i) >= 0 || cnDb(band, i) < (band.grid.required[i] ?? 0))
          continue;
        drowned.set(service, (drowned.get(service) ?? new Set()).add(`${key}#${band.grid.index[i]}`));
      }
    }
  return [...drowned].map(([service, set]) => [service, set.size]);
}
