/** An LNB beside the first one that sits where its satellite's beam does not meet: moved, or another monoblock. */
import { dishOptionsOf } from "../../parts/dishBands.ts";
import {
  feedPort,
  feedsOf,
  middleOfBandMHz,
  neededSpacingMm,
  pastSatelliteLossDb,
} from "../../parts/dishFeeds.ts";
import { optionMeaning } from "../../parts/meanings.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import { recordsAround } from "./around.ts";

/** Less nobody climbs for [dB]; what the finding about it leaves alone. */
const WORTH_DB = 1;

/** Puts it where it belongs, to the millimetre; what that takes depends on whether it can be moved. */
export const placedFeed: Idea = (site, finding) =>
  recordsAround(site, finding).flatMap((record): readonly Candidate[] => {
    const { kind, part, joined } = record;
    const key = optionMeaning(kind, "further feeds");
    const o = dishOptionsOf(record);
    if (!o || key === undefined || o.sideFeeds.length === 0) return [];
    return feedsOf(o)
      .filter((feed) => pastSatelliteLossDb(o, feed, middleOfBandMHz(o)) >= WORTH_DB)
      .map((feed) => {
        const spacingMm = Math.round(neededSpacingMm(o, feed));
        const sideFeeds = o.sideFeeds.map((row, i) => (i === feed.number - 2 ? { ...row, spacingMm } : row));
        const lnb = joined[feed.port]?.[0];
        const isMonoblock = lnb !== undefined && lnb === joined[feedPort(1)]?.[0];
        const facts = { feed: feed.number, spacingMm, isMonoblock };
        return candidate("feed-placed", [part.id, feed.number], facts, (design) => {
          const d = draft(design);
          d.set(part.id, { [key]: sideFeeds });
          return d.result();
        });
      });
  });
