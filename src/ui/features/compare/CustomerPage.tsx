import type { Verdict } from "../../../findings/finding.ts";
import { PLACEHOLDER_PRICES } from "../../../paperwork/prices.ts";
import { ESTIMATE_NOTICE } from "../../../parts/cautions.ts";
import type { Cost } from "../../../remedies/cost.ts";
import type { Site } from "../../../remedies/site.ts";
import { workingWords } from "../../../sentences/receivers.ts";
import { customerVerdict } from "../../../sentences/verdict.ts";
import { usePrices } from "../../../store/prices.ts";
import { plural } from "../../../words/plural.ts";
import { boxesOf } from "../../canvas/boxes.ts";
import { boundsOf } from "../../canvas/layout.ts";
import { PrintDrawing } from "../../canvas/PrintDrawing.tsx";
import { Table } from "../../kit/Table.tsx";
import { costWords } from "../../kit/told/costWords.ts";
import { type Compared, verdictIn } from "../../kit/told/sides.ts";
import { WorkList } from "../../kit/told/WorkList.tsx";

/** Before and after on paper, in words that need no training. */
export function CustomerPage({ compared }: { readonly compared: Compared }) {
  const { comparison, before, after, names } = compared;
  const { work, cost, places } = comparison;
  const receivers = places.filter((p) => p.role === "receiver");
  return (
    <div className="paper">
      <h1>{after.design.title}: before and after</h1>
      <p>
        <strong>Before</strong> ({names[0]}): {receiverWords(before)}
        <br />
        <strong>After</strong> ({names[1]}): {receiverWords(after)}
      </p>
      <h2>What is to be done</h2>
      <WorkList work={work} before={before.design} after={after.design} />
      <p>{ownCostWords(cost)}</p>
      <h2>What you will get</h2>
      <Table
        label="What you will get"
        isOnPaper
        rows={receivers}
        keyOf={({ part }) => part}
        columns={[
          { head: "Where", cell: ({ label }) => label },
          { head: "Before", cell: ({ part }) => placeWords(verdictIn(before, part)) },
          { head: "After", cell: ({ part }) => placeWords(verdictIn(after, part)) },
        ]}
      />
      <Drawing title="Before" site={before} />
      <Drawing title="After" site={after} />
      <p className="small">
        {ESTIMATE_NOTICE} Work on mains, bonding, lightning protection and at height follows local codes and
        belongs to licensed people.
      </p>
    </div>
  );
}

/** Invented placeholders are nothing to hand to a customer: without own prices only the cables are told. */
function ownCostWords(cost: Cost): string {
  const { prices, currency } = usePrices.getState();
  const isOwn = Object.entries(prices).some(([kind, price]) => {
    const placeholder = PLACEHOLDER_PRICES[kind];
    return price.price !== placeholder?.price || price.workMinutes !== placeholder.workMinutes;
  });
  if (isOwn) return costWords(cost, currency);
  return plural(cost.newCables, {
    zero: "No new cable.",
    one: (n) => `${n} new cable.`,
    other: (n) => `${n} new cables.`,
  });
}

const SIGNS: Readonly<Record<Verdict["state"], string>> = { works: "✓", edge: "△", fails: "✗" };

function placeWords(verdict: Verdict | undefined): string {
  return verdict ? `${SIGNS[verdict.state]} ${customerVerdict(verdict)}` : "not there";
}

function receiverWords({ report }: Site): string {
  const receivers = report.verdicts.filter((v) => v.role === "receiver");
  const working = receivers.filter((v) => v.state !== "fails").length;
  return receivers.length === 0 ? "no receiver." : `${workingWords(working, receivers.length)}.`;
}

function Drawing({ title, site }: { readonly title: string; readonly site: Site }) {
  const bounds = boundsOf(boxesOf(site.design));
  const isWide = bounds !== null && bounds.width > bounds.height * 1.2;
  return (
    <section className={isWide ? "paper-drawing sideways" : "paper-drawing"}>
      <h2>{title}</h2>
      <PrintDrawing evaluation={site.evaluation} report={site.report} />
    </section>
  );
}
