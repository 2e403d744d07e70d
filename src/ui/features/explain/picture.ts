/** Where things lie on the small picture of a finding: the axis of the strips, cut out around what is concerned. */
import type { ScaleLinear } from "d3-scale";
import type { Mark, MarkKind, SpectrumPicture } from "../../../sentences/explain/picture.ts";
import { plural } from "../../../words/plural.ts";
import { COAX_TICKS_MHZ, coaxScale, isOnSky, skyScale, skyTicks } from "../../canvas/axis.ts";
import { megahertz } from "../../kit/format.ts";

export type Stretch = Pick<SpectrumPicture, "fromMHz" | "toMHz">;

/** Whether a stretch is one of the wire from a dish. */
export function isSkyStretch({ fromMHz }: Stretch): boolean {
  return isOnSky(fromMHz);
}

/** The axis of the strips, bent as there, with a stretch of it spread over the pixels from `left` to `right`. */
export function cutOutScale(
  stretch: Stretch,
  { left, right }: { readonly left: number; readonly right: number },
): ScaleLinear<number, number> {
  const whole = isSkyStretch(stretch) ? skyScale(1, (stretch.fromMHz + stretch.toMHz) / 2) : coaxScale(1);
  const from = whole(stretch.fromMHz);
  const perShare = (right - left) / (whole(stretch.toMHz) - from);
  return whole.range(whole.range().map((share) => left + (share - from) * perShare));
}

/** Fewer ticks than this leave the reader without a measure. */
const LEAST_TICKS = 3;
/** Nearer to the right edge than this the figures of a tick would be cut off [px]. */
const HALF_LABEL_PX = 16;

/** Ticks of the strips that lie in the stretch; where these are too few, round frequencies in between. */
export function ticksOf(
  { fromMHz, toMHz }: Stretch,
  x: ScaleLinear<number, number>,
  most: number,
): readonly number[] {
  const fits = (mhz: number) => x(mhz) > x(fromMHz) && x(mhz) < x(toMHz) - HALF_LABEL_PX;
  const usual = (isSkyStretch({ fromMHz, toMHz }) ? skyTicks((fromMHz + toMHz) / 2) : COAX_TICKS_MHZ).filter(
    fits,
  );
  if (usual.length >= LEAST_TICKS) return usual.slice(0, most);
  return x.copy().domain([fromMHz, toMHz]).ticks(most).filter(fits);
}

/** Marks that mean the same, told in one line under the picture. */
export type MarkGroup = {
  readonly kind: MarkKind;
  readonly label: string;
  readonly marks: readonly Mark[];
  /** "486 to 494 MHz"; "6 places from 486 to 670 MHz". */
  readonly where: string;
};

export function markGroups(marks: readonly Mark[]): readonly MarkGroup[] {
  const groups = new Map<string, Mark[]>();
  for (const mark of marks) {
    const key = `${mark.kind} ${mark.label}`;
    groups.set(key, [...(groups.get(key) ?? []), mark]);
  }
  return [...groups.values()].flatMap((own) => {
    const [first] = own;
    return first ? [{ kind: first.kind, label: first.label, marks: own, where: whereOf(own) }] : [];
  });
}

function whereOf(marks: readonly Mark[]): string {
  const from = Math.min(...marks.map((m) => m.fromMHz));
  const to = Math.max(...marks.map((m) => m.toMHz));
  const range = `${megahertz(Math.round(from))} to ${megahertz(Math.round(to))} MHz`;
  return plural(marks.length, { one: range, other: (n) => `${n} places from ${range}` });
}

/** What a mark means, and a sign for it that needs no colour. */
export const MARK_LOOK: Readonly<Record<MarkKind, { readonly word: string; readonly sign: string }>> = {
  clash: { word: "Clash", sign: "✕" },
  lost: { word: "Lost", sign: "⊘" },
  weak: { word: "Too weak", sign: "▽" },
  strong: { word: "Too strong", sign: "△" },
  noisy: { word: "Too noisy", sign: "≈" },
  wrong: { word: "Not what is wanted", sign: "≠" },
  stretch: { word: "Stretch", sign: "↔" },
};
