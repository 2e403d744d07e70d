/** The feed of an LNB: how well it keeps polarisations apart, how it is turned, and which waves it is made for. */
import { axialRatioCrossPolarDb, HALF_SHARE, turnedFeedShares } from "../rf/crossPolar.ts";
import { dbToRatio } from "../rf/decibel.ts";
import type { Polarisation } from "../signal/carrier.ts";
import type { FeedShares } from "../signal/leak.ts";
import type { Path } from "./contract.ts";
import { choice, number } from "./fields.ts";
import { type QuadrantPort, quadrantConversion } from "./quadrants.ts";

/** Option fields of the feed. */
export function feedFields(feedType: FeedOptions["feedType"] = "linear") {
  return {
    skewErrorDeg: number({
      label: "Skew error",
      unit: "°",
      help: "How far the LNB is turned in its clamp from where it should be, to either side. How V and H lean in the sky is counted already.",
      min: 0,
      max: 90,
      step: 1,
      default: 0,
      means: "skew error",
      onSite: "aligning",
      onlyWhen: { feedType: "linear" },
      soundValue: 0,
      defectAbove: 3,
    }),
    crossPolarDb: number({
      label: "Cross-polar isolation",
      unit: "dB",
      help: "How far the feed keeps the other polarisation down while it stands right.",
      min: 10,
      max: 60,
      step: 1,
      default: 22,
      source: "usual are 20 to 25 dB, from memory; 25 dB at best, says a manual of cascaded switches",
      onlyWhen: { feedType: "linear" },
      means: "cross-polar isolation",
      spreadDb: 2,
      advanced: true,
    }),
    feedType: choice({
      label: "Made for",
      help: "A linear feed takes half of a circular wave and cannot tell right from left; a circular one the other way round.",
      choices: [
        { value: "linear", label: "Linear (V and H)" },
        { value: "circular", label: "Circular (right and left)" },
      ],
      default: feedType,
      means: "feed type",
      advanced: true,
    }),
    axialRatioDb: number({
      label: "Axial ratio",
      unit: "dB",
      help: "How far the polariser is from a perfect circle.",
      min: 0.1,
      max: 6,
      step: 0.1,
      default: 1,
      source: "typical, from memory; 1 dB keeps right and left 24.8 dB apart",
      onlyWhen: { feedType: "circular" },
      spreadDb: 0.3,
      advanced: true,
    }),
  };
}

export type FeedOptions = {
  readonly skewErrorDeg: number;
  readonly crossPolarDb: number;
  readonly feedType: "linear" | "circular";
  readonly axialRatioDb: number;
};

/** What an output for V (13 V, right-hand) or H (18 V, left-hand) takes of each wave. */
export function feedShares(polarisation: Polarisation, o: FeedOptions): FeedShares {
  const isV = polarisation === "V";
  if (o.feedType === "circular") {
    const other = dbToRatio(-axialRatioCrossPolarDb(o.axialRatioDb));
    return { R: isV ? 1 : other, L: isV ? other : 1, V: HALF_SHARE, H: HALF_SHARE };
  }
  const { wanted, other } = turnedFeedShares({ turnedDeg: o.skewErrorDeg, crossPolarDb: o.crossPolarDb });
  return { V: isV ? wanted : other, H: isV ? other : wanted, R: HALF_SHARE, L: HALF_SHARE };
}

/** What a path of an LNB does to the beam to get one quadrant at its IF. */
export function quadrantFromSky(
  q: QuadrantPort,
  o: FeedOptions & Parameters<typeof quadrantConversion>[1],
): ReturnType<typeof quadrantConversion> & Required<Pick<Path, "feed">> {
  return { ...quadrantConversion(q, o), feed: feedShares(q.polarisation, o) };
}
