import { type Rule, wireAt } from "../rule.ts";
import { carriers, partName } from "../words.ts";

/** A receiver that is given a kind of feed it cannot use. */
export const wrongFeed: Rule = {
  id: "wrong-feed",
  title: "A receiver on the wrong kind of feed",
  explain:
    "A universal receiver works out frequencies with oscillators of 9.75 and 10.6 GHz and asks for a quadrant; a wideband receiver " +
    "expects a whole polarisation on each cable, converted with about 10.4 GHz; a single-cable receiver tunes through its user band. " +
    "On another kind of feed it finds nothing where it looks.",
  source: "IF = RF − LO; EN 50494 and EN 50607 for user bands; wideband: common practice, no source",
  check: ({ record, reception }) =>
    (reception?.services ?? []).flatMap(({ service, missing }) =>
      missing
        .filter((m) => m.why === "wrong feed")
        .map((m) => ({
          severity: "error" as const,
          parts: [record.part.id],
          wires: record.ports.flatMap((p) => wireAt(record, p.id)),
          message: `${partName(record.part.id)} cannot use ${carriers(m.count, service)}: they ${m.text}.`,
          value: m.count,
          limit: 0,
          unit: carriers(2, service).slice(2),
          source: wrongFeed.source,
          cure: "Use a converter that suits the receiver, or a receiver that suits the converter.",
        })),
    ),
};
