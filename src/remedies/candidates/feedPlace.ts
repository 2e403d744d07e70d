/** An LNB beside the first one that sits where its satellite's beam does not meet: moved, or another monoblock. */
import { feedPort, feedsOf, neededSpacingMm, pastSatelliteLossDb } from "../../parts/dishFeeds.ts";
import { DISH_OPTIONS } from "../../parts/dishOptions.ts";
import { optionMeaning } from "../../parts/meanings.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import { recordsAround } from "./around.ts";

/** Less nobody climbs for [dB]; what the finding about it leaves alone. */
const WORTH_DB = 1;
/** Middle of the sky band [MHz]. */
const SKY_MHZ = 11_700;

/** Puts it where it belongs, to the millimetre; what that takes depends on whether it can be moved. */
export const placedFeed: Idea = (site, finding) =>
  recordsAround(site, finding).flatMap((record): readonly Candidate[] => {
    const { kind, options, part, joined } = record;
    const key = optionMeaning(kind, "further feeds");
    const rows = options[key ?? ""];
    if (kind.options !== DISH_OPTIONS || key === undefined || !Array.isArray(rows) || rows.length === 0)
      return [];
    const o = DISH_OPTIONS.parse(options);
    return feedsOf(o)
      .filter((feed) => pastSatelliteLossDb(o, feed, SKY_MHZ) >= WORTH_DB)
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
