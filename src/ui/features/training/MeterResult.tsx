import type { CarrierReading, Reading } from "../../../remedies/faults/reading.ts";
import { QUANTITY_UNITS } from "../../../remedies/faults/reading.ts";
import { FOR_PLAN_VALUE } from "../../../remedies/training/score.ts";
import { readingWords } from "../../../sentences/faults/readingWords.ts";
import type { Service } from "../../../signal/carrier.ts";
import type { MeterShows } from "../../../store/trainingMeter.ts";
import { numeral } from "../../../words/numbers.ts";
import { type CaseProps, usePlanValue } from "./useCase.ts";

/** What the meter shows, and below it what the plan says for the same place. */
export function MeterResult({
  session,
  shows: { actual, planned },
}: CaseProps & { readonly shows: MeterShows }) {
  const plan = usePlanValue(session);
  if (!actual) return <p>Nothing to connect to here.</p>;
  return (
    <>
      <p className="meter-value">{readingWords(actual)}</p>
      {"carriers" in actual ? (
        <Picture
          actual={actual.carriers}
          planned={plan.isShown && planned && "carriers" in planned ? planned.carriers : []}
          quantity={actual.quantity}
        />
      ) : null}
      {plan.isShown ? <p className="small">Plan: {planned ? readingWords(planned) : "nothing"}</p> : null}
      {!plan.isShown && plan.lookUp ? (
        <button type="button" className="button small" onClick={plan.lookUp}>
          Show plan value ({FOR_PLAN_VALUE} points)
        </button>
      ) : null}
      {plan.isShown || plan.lookUp ? null : (
        <p className="quiet small">At this level there is no plan value: judge the reading yourself.</p>
      )}
    </>
  );
}

type PictureProps = {
  readonly actual: readonly CarrierReading[];
  readonly planned: readonly CarrierReading[];
  readonly quantity: Exclude<Reading["quantity"], "volts" | "tone">;
};

const WIDTH = 340;
const HEIGHT = 96;
const FLOOR = 14;
const COLOURS: Readonly<Record<Service, string>> = {
  tv: "var(--service-tv)",
  dab: "var(--service-dab)",
  fm: "var(--service-fm)",
  satellite: "var(--service-sat-v)",
  distant: "var(--service-distant)",
  mobile: "var(--service-mobile)",
  cordless: "var(--service-cordless)",
};

/** Carriers as bars over frequency, the planned ones as outlines. Decoration: the words say it too. */
function Picture({ actual, planned, quantity }: PictureProps) {
  const all = [...actual, ...planned];
  if (all.length === 0) return null;
  const most = Math.max(...all.map((c) => c.value), 1);
  const first = Math.min(...all.map((c) => c.centreMHz));
  const last = Math.max(...all.map((c) => c.centreMHz));
  const x = (mhz: number) => 6 + ((mhz - first) / Math.max(1, last - first)) * (WIDTH - 14);
  const height = (value: number) => Math.max(1, (Math.max(0, value) / most) * (HEIGHT - FLOOR - 6));
  const bar = (c: CarrierReading) =>
    `M${x(c.centreMHz) - 1.5} ${HEIGHT - FLOOR}v${-height(c.value)}h3v${height(c.value)}z`;
  return (
    <svg className="meter-picture" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
      <path className="strip-ground" d={`M0 ${HEIGHT - FLOOR}H${WIDTH}`} />
      {planned.map((c) => (
        <path key={`p${c.service}${c.centreMHz}${c.name}`} className="meter-plan" d={bar(c)} />
      ))}
      {actual.map((c) => (
        <path key={`a${c.service}${c.centreMHz}${c.name}`} d={bar(c)} fill={COLOURS[c.service]} />
      ))}
      <text x={2} y={HEIGHT - 2}>
        {numeral(first, 0)} MHz
      </text>
      <text x={WIDTH - 2} y={HEIGHT - 2} textAnchor="end">
        {numeral(last, 0)} MHz, top {numeral(most)} {QUANTITY_UNITS[quantity]}
      </text>
    </svg>
  );
}
