/** User bands of a single-cable line: one of its own for each tuner, and receivers set to use them. */
import type { Part } from "../../design/design.ts";
import { kindOf } from "../../parts/catalogue.ts";
import { optionMeaning } from "../../parts/meanings.ts";
import { plural } from "../../words/plural.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import type { Draft } from "../draft.ts";
import { draft } from "../draft.ts";
import { fedBy, labelOf, type SatelliteInput, type Site, satelliteInputs } from "../site.ts";

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
export function handOut(
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

export function tunersOf(options: Readonly<Record<string, unknown>>): number {
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
    const name = labelOf(site, first.feeding.converter.part.id);
    const tunings = able.map((i) => ({ receiver: i.receiver.part.id, tuners: tunersOf(i.receiver.options) }));
    const about = [first.feeding.converter.part.id, first.feeding.port] as const;
    // A band that some plate cuts is of no use to anybody on the line: the poorest input decides.
    const common = userBandsAt(first).filter((b) =>
      able.every((i) => userBandsAt(i).some((c) => c.number === b.number)),
    );
    const found: Candidate[] = [];
    const given = handOut(tunings, common);
    if (given)
      found.push(
        candidate(
          "own-user-bands",
          about,
          {
            title: `Give each tuner on the line of ${name} a user band of its own`,
            reason: "Each tuner then asks for its own transponder, and none retunes another.",
          },
          (design) => {
            const d = draft(design);
            tune(d, given);
            return d.result();
          },
        ),
      );
    else found.push(...widerSet(site, first, tunings));
    return found;
  });

export function tune(d: Draft, given: ReadonlyMap<string, readonly UserBandRow[]>): void {
  for (const [id, userBands] of given) d.set(id, { mode: "single-cable", userBands });
}

/** A converter with 32 user bands where 4 or 8 are too few. */
function widerSet(site: Site, input: SatelliteInput, tunings: readonly Tuning[]): readonly Candidate[] {
  const { converter } = input.feeding;
  const { id } = converter.part;
  const set = optionMeaning(converter.kind, "user band set");
  const standard = optionMeaning(converter.kind, "user band standard");
  if (!set || !standard || converter.options[set] === "thirtyTwo") return [];
  return [
    candidate(
      "more-user-bands",
      [id],
      {
        title: `Take a converter with 32 user bands (EN 50607) for ${labelOf(site, id)}`,
        reason: plural(
          tunings.reduce((n, t) => n + t.tuners, 0),
          {
            one: "One tuner hangs on its line, and it has no user band for it.",
            other: (n) => `${n} tuners hang on its line, and it has fewer user bands.`,
          },
        ),
      },
      (design) => {
        const d = draft(design);
        d.set(id, { [standard]: "EN 50607", [set]: "thirtyTwo" });
        const given = handOut(tunings, userBandsSent(d.part(id)));
        if (!given) return null;
        tune(d, given);
        return d.result();
      },
    ),
  ];
}

/** Turns whatever hangs on the lines of a converter into single-cable receivers with user bands of their own. */
export function stackReceivers(
  d: Draft,
  lines: readonly (readonly string[])[],
  bands: readonly UserBandRow[],
): boolean {
  for (const line of lines) {
    const tunings = line.map((id) => ({ receiver: id, tuners: tunersOn(d, [id]) }));
    const given = handOut(tunings, bands);
    if (!given) return false;
    for (const { receiver, tuners } of tunings) {
      if (kindOf(d.part(receiver)?.kind ?? "")?.trade.takes !== "stacked")
        d.swap(receiver, "receiver-stacked", { tuners });
    }
    tune(d, given);
  }
  return true;
}

/** Tuners of some receivers as single-cable receivers; more than eight in one are hardly ever made. */
export function tunersOn(d: Draft, receivers: readonly string[]): number {
  return receivers.reduce((n, id) => n + Math.min(8, tunersOf(d.part(id)?.options ?? {})), 0);
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
