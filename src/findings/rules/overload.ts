import type { Drive, PartRecord } from "../../evaluate/evaluation.ts";
import { type Service, WANTED_SERVICES } from "../../signal/carrier.ts";
import { cnDb, isLive, marginDb } from "../../signal/readout.ts";
import { markCarriers, pictureOf, spectrumAt, spotOf } from "../explain/picture.ts";
import { capital, plainName } from "../explain/plainWords.ts";
import { type Rule, wireAt } from "../rule.ts";
import { carriers, list, partName, round1 } from "../words.ts";

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
    const drowned = drownedIn(record);
    const toll = drowned.map(([service, n]) => carriers(n, service));
    return [
      {
        severity: toll.length > 0 ? "error" : "warning",
        parts: [record.part.id],
        wires: drive.port.startsWith("#") ? [] : wireAt(record, drive.port),
        message:
          `${partName(record.part.id)} gives ${round1(drive.levelDbuv)} dBµV for each of ${Math.round(drive.carriers)} carriers, ` +
          `${round1(over)} dB over its limit: their products lie only ${round1(drive.ratioDb)} dB below them` +
          (toll.length > 0
            ? `, and ${list(toll)} ${soleCarrier(drowned) ? "is" : "are"} lost in them.`
            : "."),
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
      const off = drive?.rule === "power" ? `10·log10(${n}/2)` : `7.5·log10(${n} − 1)`;
      return (
        `${partName(finding.parts[0] ?? "")} puts out ${n} carriers of ${round1(finding.value ?? 0)} dBµV, ${round1(drive?.totalDbuv ?? 0)} dBµV in all. Its rated output, less ${off} for ` +
        `that many carriers, allows ${round1(finding.limit ?? 0)} dBµV each: ${round1((finding.value ?? 0) - (finding.limit ?? 0))} dB too much. Third-order products fall on the carriers, now ` +
        `${round1(drive?.ratioDb ?? 0)} dB below them, and every further decibel costs two.`
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
      const port = outputOf(facts.record, facts.finding.port);
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

function soleCarrier(drowned: readonly (readonly [Service, number])[]): boolean {
  return drowned.length === 1 && drowned[0]?.[1] === 1;
}
