/** A small picture of the spectrum that a finding is about, as data: whoever shows it draws it. */
import { type PortRef, wireId } from "../../design/design.ts";
import { type Band, SILENCE, type Spectrum } from "../../signal/band.ts";
import type { ToldFinding } from "../ruleWords.ts";

export type MarkKind =
  /** Two signals lie over each other. */
  | "clash"
  /** Filtered away, or not to be had from here. */
  | "lost"
  | "weak"
  | "strong"
  | "noisy"
  /** There, but not what is wanted. */
  | "wrong"
  /** A stretch that is spoken of, nothing more. */
  | "stretch";

export type Mark = {
  readonly kind: MarkKind;
  readonly fromMHz: number;
  readonly toMHz: number;
  readonly label: string;
  /** A level drawn across the mark: the limit that is missed [dBµV]. */
  readonly levelDbuv?: number;
};

export type SpectrumPicture = {
  /** Output whose spectrum is shown. */
  readonly at: PortRef;
  /** The wire on it; null for an open socket. */
  readonly wire: string | null;
  readonly fromMHz: number;
  readonly toMHz: number;
  readonly marks: readonly Mark[];
};

/** An output and the wire on it. */
export type Spot = Pick<SpectrumPicture, "at" | "wire">;

/** Spot of a port of the finding's first part; that of its first wire where no port is given; null: there is none. */
export function spotOf({ finding, evaluation, record }: ToldFinding, port = finding.at.port): Spot | null {
  if (!record || port === undefined) {
    const wire = evaluation.design.wires.find((w) => wireId(w) === finding.wires[0]);
    return wire ? { at: wire.from, wire: wireId(wire) } : null;
  }
  const own: PortRef = [record.part.id, port];
  const far = record.joined[port];
  if (record.ports.some((p) => p.id === port && p.side === "out"))
    return { at: own, wire: far ? wireId({ from: own, to: far }) : null };
  return far ? { at: far, wire: wireId({ from: far, to: own }) } : null;
}

export function spectrumAt({ evaluation }: ToldFinding, { at: [part, port] }: Spot): Spectrum {
  return evaluation.record(part)?.outputs[port] ?? SILENCE;
}

/** Room beside what is marked, as a share of the stretch. */
const MARGIN = 0.08;
/** Marks of a single carrier still leave something of the neighbourhood to see [MHz]. */
const LEAST_STRETCH_MHZ = 60;

/** A picture of the marks that have a width; of everything on the spot where nothing is marked. Null where there is nothing to show. */
export function pictureOf(
  facts: ToldFinding,
  spot: Spot | null,
  marks: readonly Mark[],
): SpectrumPicture | null {
  if (!spot) return null;
  const wide = marks.filter((mark) => mark.toMHz > mark.fromMHz);
  const shown = wide.length > 0 ? wide : spectrumAt(facts, spot).bands.map((b) => b.grid);
  if (shown.length === 0) return null;
  const from = Math.min(...shown.map((s) => s.fromMHz));
  const to = Math.max(...shown.map((s) => s.toMHz));
  const room = Math.max((to - from) * MARGIN, (LEAST_STRETCH_MHZ - (to - from)) / 2);
  return { ...spot, fromMHz: Math.max(0, from - room), toMHz: to + room, marks: wide };
}

/** Marks the chosen carriers of a spectrum; neighbours closer than half their width become one mark. */
export function markCarriers(
  { bands }: Spectrum,
  chosen: (band: Band, i: number) => boolean,
  look: Omit<Mark, "fromMHz" | "toMHz">,
): readonly Mark[] {
  const ranges = bands.flatMap((band) =>
    Array.from(band.grid.centre.keys())
      .filter((i) => chosen(band, i))
      .map((i) => {
        const half = (band.grid.width[i] ?? 0) / 2;
        const centre = band.grid.centre[i] ?? 0;
        return { fromMHz: Math.max(0, centre - half), toMHz: centre + half };
      }),
  );
  const marks: Mark[] = [];
  for (const range of ranges.sort((a, b) => a.fromMHz - b.fromMHz)) {
    const last = marks.at(-1);
    const nearMHz = (range.toMHz - range.fromMHz) / 2;
    if (last && range.fromMHz <= last.toMHz + nearMHz)
      marks[marks.length - 1] = { ...last, toMHz: Math.max(last.toMHz, range.toMHz) };
    else marks.push({ ...look, ...range });
  }
  return marks;
}
