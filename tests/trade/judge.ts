/** Judges one case of the trade: does one of the first two causes name the part, is a right cure among the first three? */
import type { Design } from "../../src/design/design.ts";
import { wireId } from "../../src/design/design.ts";
import type { Cause } from "../../src/findings/finding.ts";
import { PLACEHOLDER_PRICES } from "../../src/paperwork/prices.ts";
import type { Proposal } from "../../src/remedies/proposal.ts";
import { search } from "../../src/remedies/search.ts";
import { type Site, siteOf } from "../../src/remedies/site.ts";
import type { TradeCase } from "./drawings.ts";
import { isNamed, namingOf } from "./naming.ts";

export type Judgement = {
  readonly site: Site;
  readonly causes: readonly Cause[];
  readonly proposals: readonly Proposal[];
  readonly isNamed: boolean;
  readonly isCured: boolean;
};

/** Looks at the first two causes and the first three proposals, as somebody on a roof does. */
export function judge(faulty: TradeCase): Judgement {
  const { design, mend } = faulty;
  const naming = namingOf(faulty);
  const site = siteOf(design);
  const proposals = proposalsFor(design).slice(0, 3);
  return {
    site,
    causes: naming.causes,
    proposals,
    isNamed: isNamed(faulty, naming),
    isCured: proposals.some((p) => changes(design, p.design, mend) && failing(siteOf(p.design)) === 0),
  };
}

function proposalsFor(design: Design): readonly Proposal[] {
  let proposals: readonly Proposal[] = [];
  for (const progress of search(design, { prices: PLACEHOLDER_PRICES })) proposals = progress.proposals;
  return proposals;
}

/** Whether one of the parts is changed, gone, or wired otherwise. */
function changes(before: Design, after: Design, parts: readonly string[]): boolean {
  const options = (design: Design, id: string) => {
    const part = design.parts.find((p) => p.id === id);
    return part && JSON.stringify([part.kind, part.options]);
  };
  const wires = (design: Design, id: string) =>
    design.wires
      .filter(({ from, to }) => from[0] === id || to[0] === id)
      .map(wireId)
      .sort()
      .join();
  return parts.some(
    (id) => options(before, id) !== options(after, id) || wires(before, id) !== wires(after, id),
  );
}

function failing(site: Site): number {
  return site.report.verdicts.filter((v) => v.role === "receiver" && v.state === "fails").length;
}
