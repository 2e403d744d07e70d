/** User bands of a single-cable line: one of its own for each tuner, and receivers set to use them. */
import { z } from "zod";
import type { Part } from "../../design/design.ts";
import { kindOf } from "../../parts/catalogue.ts";
import { optionMeaning, optionsMeaning } from "../../parts/meanings.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import type { DesignDraft } from "../draft.ts";
import { draft } from "../draft.ts";
import { fedBy, type SatelliteInput, type Site, satelliteInputs } from "../site.ts";

export type UserBandRow = { readonly number: number; readonly centreMHz: number };

/** The user bands that get to an input; those that the converter sends out, where nothing arrives at all. */
function userBandsAt(input: SatelliteInput): readonly UserBandRow[] {
  const { receiver, port, feeding } = input;
  const band = receiver.inputs[port]?.bands.find((b) => b.stack?.part === feeding.converter.part.id);
  const { kind, options, part } = feeding.converter;
  const stack = kind
    .signal(options, { id: part.id, powered: true })
    .stacks?.find((s) => s.to === feeding.port);
  const sent = stack?.userBands ?? [];
  const arriving = sent.filter(({ number }) => {
    const at = band?.stack?.numbers.indexOf(number) ?? -1;
    return !band || (at >= 0 && band.cut[at] === 0);
  });
  return arriving.map(({ number, centreMHz }) => ({ number, centreMHz }));
}

export type Tuning = { readonly receiver: string; readonly tuners: number };

/** Hands user bands out, each once; null when there are too few. */
export function assignUserBands(
  tunings: readonly Tuning[],
  bands: readonly UserBandRow[],
): ReadonlyMap<string, readonly UserBandRow[]> | null {
  let next = 0;
  const given = new Map<string, readonly UserBandRow[]>();
  for (const { receiver, tuners } of tunings) {
    const own = bands.slice(next, next + tuners);
    if (own.length < tuners) return null;
    next += tuners;
    given.set(receiver, own);
  }
  return given;
}

export function tunerCountOf(options: Readonly<Record<string, unknown>>): number {
  return typeof options.tuners === "number" ? options.tuners : 2;
}

/** Receivers on the single-cable lines that a finding speaks of, line by line. */
function linesOf(site: Site, parts: readonly string[]): readonly (readonly SatelliteInput[])[] {
  const lines = new Map<string, SatelliteInput[]>();
  for (const input of satelliteInputs(site)) {
    const { converter, port } = input.feeding;
    if (!converter.power.switches?.some((s) => s.port === port && s.by === "stack")) continue;
    const key = `${converter.part.id}.${port}`;
    lines.set(key, [...(lines.get(key) ?? []), input]);
  }
  const concerned = new Set(parts);
  return [...lines.values()].filter((line) =>
    line.some((i) => concerned.has(i.receiver.part.id) || concerned.has(i.feeding.converter.part.id)),
  );
}

/** Every single-cable receiver of a line set to that mode, with user bands that nobody else has. */
export const ownUserBands: Idea = (site, finding) =>
  linesOf(site, finding.parts).flatMap((line): Candidate[] => {
    const [first] = line;
    const able = line.filter((i) => i.receiver.kind.trade.takes === "stacked");
    if (!first || able.length === 0) return [];
    // A band that some plate cuts is of no use to anybody on the line: the poorest input decides.
    const common = userBandsAt(first).filter((b) =>
      able.every((i) => userBandsAt(i).some((c) => c.number === b.number)),
    );
    const { port, converter } = first.feeding;
    const of = converter.part.id;
    const retuned = (given: ReadonlyMap<string, readonly UserBandRow[]>): Candidate => {
      const receivers = [...given.keys()];
      return candidate("own-user-bands", [of, port, ...receivers], { converter: of, receivers }, (design) => {
        const d = draft(design);
        setUserBands(d, given);
        return d.result();
      });
    };
    const tunings = able.map((i) => ({
      receiver: i.receiver.part.id,
      tuners: tunerCountOf(i.receiver.options),
    }));
    const alone = able.flatMap((input) => {
      const rows = beside(input, able, common);
      return rows ? [retuned(new Map([[input.receiver.part.id, rows]]))] : [];
    });
    const given = assignUserBands(tunings, common);
    return [...(able.length > 1 ? alone : []), ...(given ? [retuned(given)] : widerSet(first, tunings))];
  });

/** User bands for one receiver beside those of the others on its line; undefined where it has them, or none are left. */
function beside(
  input: SatelliteInput,
  line: readonly SatelliteInput[],
  common: readonly UserBandRow[],
): readonly UserBandRow[] | undefined {
  const used = new Set(line.flatMap((i) => (i === input ? [] : rowsOf(i).map((r) => r.number))));
  const free = common.filter((b) => !used.has(b.number));
  const own = rowsOf(input);
  const kept = free.filter((b) => own.some((r) => r.number === b.number && r.centreMHz === b.centreMHz));
  const tuners = tunerCountOf(input.receiver.options);
  if (kept.length >= tuners || free.length < tuners) return undefined;
  return [...kept, ...free.filter((b) => !kept.includes(b))].slice(0, tuners);
}

const bandRows = z.array(z.object({ number: z.number(), centreMHz: z.number() }));

/** The user bands that a receiver is set to. */
function rowsOf({ receiver }: SatelliteInput): readonly UserBandRow[] {
  const [key = ""] = optionsMeaning(receiver.kind, "receiver user bands");
  return bandRows.safeParse(receiver.options[key]).data ?? [];
}

export function setUserBands(d: DesignDraft, given: ReadonlyMap<string, readonly UserBandRow[]>): void {
  for (const [id, userBands] of given) d.set(id, { mode: "single-cable", userBands });
}

/** A converter with 32 user bands where 4 or 8 are too few. */
function widerSet(input: SatelliteInput, tunings: readonly Tuning[]): readonly Candidate[] {
  const { converter } = input.feeding;
  const { id } = converter.part;
  const set = optionMeaning(converter.kind, "user band set");
  const standard = optionMeaning(converter.kind, "user band standard");
  if (!set || !standard || converter.options[set] === "thirtyTwo") return [];
  return [
    candidate("more-user-bands", [id], { tuners: tunings.reduce((n, t) => n + t.tuners, 0) }, (design) => {
      const d = draft(design);
      d.set(id, { [standard]: "EN 50607", [set]: "thirtyTwo" });
      const given = assignUserBands(tunings, userBandsSent(d.part(id)));
      if (!given) return null;
      setUserBands(d, given);
      return d.result();
    }),
  ];
}

/** Turns whatever hangs on the lines of a converter into single-cable receivers with user bands of their own. */
export function stackReceivers(
  d: DesignDraft,
  lines: readonly (readonly string[])[],
  bands: readonly UserBandRow[],
): boolean {
  for (const line of lines) {
    const tunings = line.map((id) => ({ receiver: id, tuners: tunersOn(d, [id]) }));
    const given = assignUserBands(tunings, bands);
    if (!given) return false;
    for (const { receiver, tuners } of tunings) {
      if (kindOf(d.part(receiver)?.kind ?? "")?.trade.takes !== "stacked")
        d.swap(receiver, "receiver-stacked", { tuners });
    }
    setUserBands(d, given);
  }
  return true;
}

/** Tuners of some receivers as single-cable receivers; more than eight in one are hardly ever made. */
export function tunersOn(d: DesignDraft, receivers: readonly string[]): number {
  return receivers.reduce((n, id) => n + Math.min(8, tunerCountOf(d.part(id)?.options ?? {})), 0);
}

/** Receivers of a converter by the output they hang on. */
export function linesFrom(site: Site, converter: string): ReadonlyMap<string, readonly SatelliteInput[]> {
  const lines = new Map<string, SatelliteInput[]>();
  for (const input of fedBy(site, converter)) {
    const { port } = input.feeding;
    lines.set(port, [...(lines.get(port) ?? []), input]);
  }
  return lines;
}

/** User bands that a converter sends out, on each of its outputs; none where it is no converter of that sort. */
export function userBandsSent(part: Part | undefined): readonly UserBandRow[] {
  const stacks = part && kindOf(part.kind)?.signal(part.options, { id: part.id, powered: true }).stacks;
  return (stacks?.[0]?.userBands ?? []).map(({ number, centreMHz }) => ({ number, centreMHz }));
}
