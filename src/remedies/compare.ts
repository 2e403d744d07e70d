/** Two designs side by side: what comes and goes, who gains and who loses, what it costs. */
import type { Design, PartId } from "../design/design.ts";
import { replaceKind } from "../design/edits/replace.ts";
import type { Evaluation } from "../evaluate/evaluation.ts";
import type { Finding, ServiceVerdict, Verdict } from "../findings/finding.ts";
import type { Service } from "../signal/carrier.ts";
import { type Cost, costOf } from "./cost.ts";
import { type Difference, difference } from "./difference.ts";
import type { PriceList } from "./prices.ts";
import { proofOf } from "./proof.ts";
import { type Site, siteOf } from "./site.ts";
import { type Work, workOf } from "./work.ts";

/** One service of one receiver or outlet; a side is absent where there is no such service, or no such part. */
export type ServiceChange = {
  readonly service: Service;
  readonly before?: ServiceVerdict;
  readonly after?: ServiceVerdict;
  readonly change: "gained" | "lost" | "same";
};

export type PlaceChange = {
  readonly part: PartId;
  readonly label: string;
  readonly role: Verdict["role"];
  readonly worked: boolean;
  readonly works: boolean;
  readonly change: "gained" | "lost" | "mixed" | "same" | "added" | "removed";
  readonly services: readonly ServiceChange[];
};

export type Comparison = {
  readonly difference: Difference;
  /** What has to be done for it. */
  readonly work: readonly Work[];
  /** Every receiver and outlet of either design: those of the first in its order, then the added ones. */
  readonly places: readonly PlaceChange[];
  /** What goes, told by the first design's evaluation; what is new or graver, by the second's. */
  readonly cured: readonly Finding[];
  readonly caused: readonly Finding[];
  readonly evaluations: { readonly before: Evaluation; readonly after: Evaluation };
  readonly cost: Cost;
};

/** What changes on the way from one design to the other; neither is touched. */
export function compare(before: Design, after: Design, prices: PriceList): Comparison {
  const first = siteOf(before);
  return compareSites(first, siteOf(after, first.evaluation), prices);
}

export function compareSites(before: Site, after: Site, prices: PriceList): Comparison {
  const diff = difference(before.design, after.design);
  const { cured, caused } = proofOf(before, after);
  const work = workOf(diff, prices);
  return {
    difference: diff,
    work,
    places: placesOf(before, after),
    cured,
    caused,
    evaluations: { before: before.evaluation, after: after.evaluation },
    cost: costOf(diff, prices, work),
  };
}

export type Swap =
  | ({ readonly ok: true; readonly design: Design; readonly notes: readonly string[] } & Comparison)
  | { readonly ok: false; readonly reason: string };

/**
 * What breaks if a part is replaced by one of another kind, in its place, with nothing else changed.
 * `known`: the design as it was evaluated already, of which as much as possible is kept.
 */
export function whatBreaks(
  design: Design,
  part: PartId,
  kind: string,
  prices: PriceList,
  known?: Site,
): Swap {
  const edit = replaceKind(design, part, kind);
  if (!edit.ok) return edit;
  const before = known ?? siteOf(design);
  const after = siteOf(edit.design, before.evaluation);
  return { ok: true, design: edit.design, notes: edit.notes, ...compareSites(before, after, prices) };
}

function placesOf(before: Site, after: Site): readonly PlaceChange[] {
  const was = new Map(before.report.verdicts.map((v) => [v.part, v]));
  const is = new Map(after.report.verdicts.map((v) => [v.part, v]));
  const ids = new Set([...was.keys(), ...is.keys()]);
  return [...ids].flatMap((id) => {
    const [a, b] = [was.get(id), is.get(id)];
    const label = after.evaluation.record(id)?.part.label ?? before.evaluation.record(id)?.part.label ?? id;
    const one = b ?? a;
    return one ? [placeChange({ part: id, label, role: one.role }, a, b)] : [];
  });
}

function placeChange(
  place: Pick<PlaceChange, "part" | "label" | "role">,
  a: Verdict | undefined,
  b: Verdict | undefined,
): PlaceChange {
  const named = new Set([...(a?.services ?? []), ...(b?.services ?? [])].map((s) => s.service));
  const services = [...named].map((service) => serviceChange(service, a, b));
  const changes = new Set(services.map((s) => s.change));
  const change = !a
    ? "added"
    : !b
      ? "removed"
      : changes.has("gained") && changes.has("lost")
        ? "mixed"
        : changes.has("gained")
          ? "gained"
          : changes.has("lost")
            ? "lost"
            : "same";
  return {
    ...place,
    worked: a !== undefined && a.state !== "fails",
    works: b !== undefined && b.state !== "fails",
    change,
    services,
  };
}

function serviceChange(service: Service, a: Verdict | undefined, b: Verdict | undefined): ServiceChange {
  const before = a?.services.find((s) => s.service === service);
  const after = b?.services.find((s) => s.service === service);
  const [had, has] = [shareOf(before), shareOf(after)];
  return {
    service,
    ...(before ? { before } : {}),
    ...(after ? { after } : {}),
    change: has > had ? "gained" : has < had ? "lost" : "same",
  };
}

/** Of an outlet the number that arrives may change with the kind of feed: shares can be compared, counts cannot. */
function shareOf(s: ServiceVerdict | undefined): number {
  return s && s.wanted > 0 ? s.got / s.wanted : 0;
}
