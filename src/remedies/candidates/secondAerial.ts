/** One aerial cannot look two ways: a second one for the other transmitter, each with a filter for its own channels. */
import { z } from "zod";
import type { PartRecord } from "../../evaluate/evaluation.ts";
import { describedOptions, doesCount, optionMeaning } from "../../parts/meanings.ts";
import { bearingDifferenceDeg } from "../../rf/aerialPattern.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import { recordsAround } from "./around.ts";

/** Transmitters nearer to each other than that one aerial sees together [°]; common practice, no source. */
const APART_DEG = 30;

const ROWS = z.array(
  z.object({
    channel: z.number(),
    bearingDeg: z.number(),
    polarisation: z.enum(["like", "H", "V"]),
    wanted: z.boolean(),
  }),
);
type Row = z.output<typeof ROWS>[number];

export const secondAerial: Idea = (site, finding) =>
  recordsAround(site, finding).flatMap((record): readonly Candidate[] => {
    const key = record.kind.trade.job === "aerial" ? optionMeaning(record.kind, "bearing") : undefined;
    const meta = key === undefined ? undefined : describedOptions(record.kind).get(key);
    const next = record.joined.out;
    if (key === undefined || !meta || !doesCount(meta, record.options) || !next) return [];
    const other = otherTransmitter(record, Number(record.options[key]));
    if (!other) return [];
    const { own, rest, bearingDeg } = other;
    const { id, kind, options, at } = record.part;
    const rasterKey = optionMeaning(record.kind, "channel raster");
    const raster = rasterKey === undefined ? {} : { raster: options[rasterKey] };
    const facts = { bearingDeg, channels: rest.map((r) => r.channel) };
    return [
      candidate("second-aerial", [id, bearingDeg], facts, (design) => {
        const d = draft(design);
        const [x, y] = at;
        const second = d.put(kind, { ...options, ...elementsFor(record, rest), [key]: bearingDeg }, [
          x,
          y + 160,
        ]);
        d.unjoin([id, "out"]);
        const both = d.put("combiner", { range: "tv" }, [x + 560, y]);
        [
          { from: id, rows: own, to: "in1" },
          { from: second, rows: rest, to: "in2" },
        ].forEach(({ from, rows, to }, i) => {
          const channels = rows.map(({ channel }) => ({ channel }));
          const filter = d.put("filter-channel", { channels, ...raster }, [x + 280, y + i * 160]);
          d.join([from, "out"], [filter, "in"]);
          d.join([filter, "out"], [both, to]);
        });
        d.join([both, "out"], next);
        return d.result();
      }),
    ];
  });

/** What is wanted from where the aerial looks, and from the one other direction; undefined where there is none, or more. */
function otherTransmitter({ options }: PartRecord, looksDeg: number) {
  const rows = ROWS.safeParse(options.channels);
  const wanted = rows.success ? rows.data.filter((row) => row.wanted) : [];
  const bearings = [...new Set(wanted.map((row) => row.bearingDeg))].sort(
    (a, b) => bearingDifferenceDeg(looksDeg, a) - bearingDifferenceDeg(looksDeg, b),
  );
  const [near, bearingDeg, ...more] = bearings;
  if (near === undefined || bearingDeg === undefined || more.length > 0) return undefined;
  if (bearingDifferenceDeg(near, bearingDeg) < APART_DEG) return undefined;
  const own = wanted.filter((row) => row.bearingDeg === near);
  const rest = wanted.filter((row) => row.bearingDeg === bearingDeg);
  // No filter takes a channel of one transmitter and leaves the same channel of the other.
  if (rest.some(({ channel }) => own.some((row) => row.channel === channel))) return undefined;
  return { own, rest, bearingDeg };
}

/** Elements that lie as those of all its transmitter's waves do. */
function elementsFor({ kind }: PartRecord, rows: readonly Row[]): Readonly<Record<string, unknown>> {
  const key = optionMeaning(kind, "polarisation");
  const [first, ...others] = new Set(rows.map((row) => row.polarisation));
  if (key === undefined || first === undefined || first === "like" || others.length > 0) return {};
  return { [key]: first };
}
