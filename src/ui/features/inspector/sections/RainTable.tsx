import type { PartRecord } from "../../../../evaluate/evaluation.ts";
import type { DishOptions } from "../../../../parts/dishOptions.ts";
import { useApp } from "../../../../store/app.ts";
import { numeral, numeralAsSet } from "../../../../words/numbers.ts";
import { decimal } from "../../../kit/format.ts";
import { Table } from "../../../kit/Table.tsx";
import { type Budget, rainOf } from "./dishFigures.ts";
import { durationWords, outageWords } from "./dishWords.ts";

/** Rain by share of the year, what it costs, and whether the weakest transponder stands it. */
export function RainTable({
  record,
  o,
  budget,
}: {
  readonly record: PartRecord;
  readonly o: DishOptions;
  readonly budget: Budget;
}) {
  const evaluation = useApp((s) => s.evaluation);
  const rain = rainOf(evaluation, record, o, budget);
  if (!rain) {
    return (
      <section aria-label="Rain">
        <h3>Rain</h3>
        <p className="quiet small">Connect an LNB to see how much rain the reception stands.</p>
      </section>
    );
  }
  return (
    <section aria-label="Rain">
      <h3>Rain</h3>
      <p className={rain.marginDb < 0 ? "state bad" : "small"}>
        {rain.marginDb < 0
          ? `${budget.carrier.name} is ${decimal(-rain.marginDb)} dB short even under a clear sky.`
          : `${budget.carrier.name} has ${decimal(rain.marginDb)} dB to spare under a clear sky; rain takes it below what it needs ${outageWords(rain.outage)}.`}
      </p>
      <Table
        label="Rain and margin"
        columns={[
          {
            head: "Share of the year",
            cell: (row) => (
              <>
                {numeralAsSet(row.timePercent)} %{" "}
                <span className="quiet">{durationWords(row.timePercent)}</span>
              </>
            ),
          },
          { head: "Rain takes", isNumber: true, cell: (row) => `${decimal(row.attenuationDb)} dB` },
          { head: "C/N loses", isNumber: true, cell: (row) => `${decimal(row.lossOfCnDb)} dB` },
          {
            head: "Stands it",
            isShort: (row) => row.lossOfCnDb > rain.marginDb,
            cell: (row) => (row.lossOfCnDb > rain.marginDb ? "no" : "yes"),
          },
        ]}
        rows={rain.rows}
        keyOf={(row) => row.timePercent}
      />
      <p className="quiet small">
        ITU-R P.618-13 with P.838-3, at {decimal(o.rainRateMmPerH, 0)} mm/h for {numeral(0.01, 2)} % of the
        year; antenna and LNB together {decimal(rain.systemKelvin, 0)} K. C/N loses what the rain takes and
        the noise that rain radiates. What lies behind the LNB is left out.
      </p>
    </section>
  );
}
