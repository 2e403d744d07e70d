/** The feeds of a dish: the LNB in the focus, and LNBs beside it for other satellites. */
import {
  beamwidthDeg,
  type DishDepth,
  dishGainDbi,
  feedAngleDeg,
  feedSpacingM,
  scanLossDb,
} from "../rf/dish.ts";
import { knifeEdgeLossDb } from "../rf/knifeEdge.ts";
import { directionsApartDeg, type LookAngles, lookAngles } from "../rf/lookAngles.ts";
import { homeDishDbi } from "../rf/offAxis.ts";
import type { DishOptions } from "./dishOptions.ts";
import { SKY_SPLIT_MHZ, satelliteBandOf } from "./planSatellite.ts";

/** One feed with the satellite that it looks at. */
export type DishFeed = {
  /** From 1; the first sits in the focus. */
  readonly number: number;
  readonly port: string;
  readonly orbitalPositionDegE: number;
  readonly satelliteName: string;
  readonly eirpDbw: number;
  readonly aim: LookAngles;
  /** Between its satellite and the one that the dish is aligned on, as seen from the site [degrees]. */
  readonly offAxisDeg: number;
  /** Where the feed looks: at its satellite, unless it sits beside its place. */
  readonly beam: LookAngles;
  /** How far that is from the direction that the dish is aligned on, and from its satellite [degrees]. */
  readonly beamDeg: number;
  readonly pastDeg: number;
};

/** Transponders at a feed; one beside the focus without any of its own has those of the first. */
export function rowsAtFeed(
  transponders: DishOptions["transponders"],
  feed: number,
): DishOptions["transponders"] {
  const own = transponders.filter((row) => row.feed === String(feed));
  return own.length > 0 ? own : transponders.filter((row) => row.feed === "1");
}

export function feedPort(number: number): string {
  return number === 1 ? "sky" : `sky${number}`;
}

export function feedsOf(o: DishOptions): readonly DishFeed[] {
  const focus = directionTo(o, o.orbitalPositionDegE);
  const { orbitalPositionDegE, satelliteName, eirpDbw } = o;
  return [{ orbitalPositionDegE, satelliteName, eirpDbw }, ...o.sideFeeds].map((satellite, i) => {
    const aim = i === 0 ? focus : directionTo(o, satellite.orbitalPositionDegE);
    const offAxisDeg = i === 0 ? 0 : directionsApartDeg(focus, aim);
    const spacingMm = "spacingMm" in satellite ? satellite.spacingMm : 0;
    const beamDeg = spacingMm > 0 ? feedAngleDeg(spacingMm / 1000, depthOf(o)) : offAxisDeg;
    return {
      orbitalPositionDegE: satellite.orbitalPositionDegE,
      satelliteName: satellite.satelliteName,
      eirpDbw: satellite.eirpDbw,
      number: i + 1,
      port: feedPort(i + 1),
      aim,
      offAxisDeg,
      beam: beamDeg === offAxisDeg ? aim : directionAlong(o, satellite, beamDeg / offAxisDeg),
      beamDeg,
      pastDeg: Math.abs(beamDeg - offAxisDeg),
    };
  });
}

function depthOf({ focalRatio, diameterM }: DishOptions): DishDepth {
  return { focalLengthM: focalRatio * diameterM, diameterM };
}

/** The direction so many times as far along the orbit as a satellite is from the first one. */
function directionAlong(
  o: DishOptions,
  { orbitalPositionDegE }: { readonly orbitalPositionDegE: number },
  share: number,
): LookAngles {
  const apartDegE = orbitalPositionDegE - o.orbitalPositionDegE;
  return directionTo(o, o.orbitalPositionDegE + apartDegE * (Number.isFinite(share) ? share : 1));
}

/** How far from the first LNB the one of a feed belongs [mm]. */
export function neededSpacingMm(o: DishOptions, { offAxisDeg }: Pick<DishFeed, "offAxisDeg">): number {
  return feedSpacingM(offAxisDeg, depthOf(o)) * 1000;
}

/** Direction of an orbital position from the site; the skew counts the satellite's own tilt. */
export function directionTo(o: DishOptions, orbitalPositionDegE: number): LookAngles {
  const angles = lookAngles({
    siteLatitudeDeg: o.siteLatitudeDeg,
    siteLongitudeDeg: o.siteLongitudeDeg,
    siteHeightKm: o.siteHeightM / 1000,
    satelliteLongitudeDeg: orbitalPositionDegE,
  });
  return { ...angles, skewDeg: angles.skewDeg + o.satelliteTiltDeg };
}

/** What a feed beside the focus loses at a frequency [dB, positive]. */
export function besideFocusLossDb(o: DishOptions, feed: DishFeed, frequencyMHz: number): number {
  const beam = beamwidthDeg({ diameterM: o.diameterM, frequencyMHz });
  const scanDb = scanLossDb({ offAxisDeg: feed.beamDeg, beamwidthDeg: beam });
  return scanDb + pastSatelliteLossDb(o, feed, frequencyMHz);
}

/** What a feed loses that looks past its satellite [dB, positive], by the pattern of a home dish (ITU-R BO.1213). */
export function pastSatelliteLossDb(
  { diameterM, efficiency }: DishOptions,
  { pastDeg }: Pick<DishFeed, "pastDeg">,
  frequencyMHz: number,
): number {
  if (pastDeg === 0) return 0;
  const gainDbi = dishGainDbi({ diameterM, efficiency, frequencyMHz });
  return gainDbi - homeDishDbi({ diameterM, frequencyMHz, gainDbi }, pastDeg);
}

/** Frequency at which a loss is told that differs little over the band of a dish [MHz]. */
export function middleOfBandMHz({ transponders }: DishOptions): number {
  const [first] = transponders;
  return MIDDLE_MHZ[first ? satelliteBandOf(first.frequencyMHz) : "Ku"];
}

const MIDDLE_MHZ = { C: 3_800, Ku: SKY_SPLIT_MHZ, Ka: 19_700 } as const;

export type Obstacle = DishOptions["obstacles"][number];

/** The obstacle that takes most of what comes from a direction, and how much; undefined where the view is free. */
export function obstructionOf(
  o: DishOptions,
  aim: LookAngles,
  frequencyMHz: number,
): { readonly obstacle: Obstacle; readonly lossDb: number } | undefined {
  let worst: { readonly obstacle: Obstacle; readonly lossDb: number } | undefined;
  for (const obstacle of o.obstacles) {
    if (!isBetween(aim.azimuthDeg, obstacle.fromDeg, obstacle.toDeg)) continue;
    const shadowDeg = obstacle.elevationDeg - aim.elevationDeg;
    const lossDb = knifeEdgeLossDb({ shadowDeg, distanceM: obstacle.distanceM, frequencyMHz });
    if (lossDb > (worst?.lossDb ?? 0)) worst = { obstacle, lossDb };
  }
  return worst;
}

/** Clockwise from one azimuth to the other, over north where the first is the larger. */
function isBetween(azimuthDeg: number, fromDeg: number, toDeg: number): boolean {
  return fromDeg <= toDeg
    ? azimuthDeg >= fromDeg && azimuthDeg <= toDeg
    : azimuthDeg >= fromDeg || azimuthDeg <= toDeg;
}
