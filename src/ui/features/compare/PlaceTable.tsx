import { useState } from "react";
import type { ServiceVerdict } from "../../../findings/finding.ts";
import type { ServiceChange } from "../../../remedies/compare.ts";
import type { Site } from "../../../remedies/site.ts";
import { levelRangeWords } from "../../../sentences/figures.ts";
import { verdictSentence } from "../../../sentences/verdict.ts";
import { serviceName } from "../../../signal/carrier.ts";
import { plural } from "../../../words/plural.ts";
import { decimal } from "../../kit/format.ts";
import { Table } from "../../kit/Table.tsx";
import { type Compared, inOrder, verdictIn } from "../../kit/told/sides.ts";
import { TurnMark } from "../../kit/told/TurnMark.tsx";
import styles from "./Compare.module.css";

/** Every receiver and outlet with what it gets before and after; those where nothing turns are folded away. */
export function PlaceTable({ compared }: { readonly compared: Compared }) {
  const [isAll, setAll] = useState(false);
  const places = inOrder(compared.comparison.places);
  const turned = places.filter((p) => p.change !== "same");
  const shown = isAll ? places : turned;
  const same = places.length - turned.length;
  return (
    <section>
      <h3>What each place gets</h3>
      {shown.length === 0 ? <p className="quiet">Every receiver and outlet gets as much as before.</p> : null}
      {shown.length > 0 ? (
        <Table
          label="Before and after, place by place"
          groups={shown.map(({ part, label, change, services }) => ({
            key: part,
            head: (
              <>
                {label} <TurnMark change={change} />
              </>
            ),
            cells: [sentenceIn(compared.before, part), sentenceIn(compared.after, part)],
            rows: services,
          }))}
          keyOf={({ service }) => service}
          columns={[
            {
              head: "Place and service",
              cell: ({ service, before, after }) => serviceName(after ?? before ?? { service }),
            },
            { head: compared.names[0], isNumber: true, cell: ({ before }) => <Got verdict={before} /> },
            {
              head: compared.names[1],
              isNumber: true,
              cell: ({ after, change }) => <Got verdict={after} change={change} />,
            },
          ]}
        />
      ) : null}
      {same > 0 ? (
        <button type="button" className="link" aria-expanded={isAll} onClick={() => setAll(!isAll)}>
          {isAll ? "Show only changes" : unchangedWords(same)}
        </button>
      ) : null}
    </section>
  );
}

function unchangedWords(n: number): string {
  return plural(n, {
    one: (count) => `Show ${count} unchanged place too`,
    other: (count) => `Show ${count} unchanged places too`,
  });
}

function sentenceIn(site: Site, part: string): string {
  const verdict = verdictIn(site, part);
  return verdict ? verdictSentence(verdict, site.evaluation) : "not there";
}

type GotProps = { readonly verdict: ServiceVerdict | undefined; readonly change?: ServiceChange["change"] };

function Got({ verdict, change }: GotProps) {
  if (!verdict) return <span className="quiet">–</span>;
  const { got, wanted, levelMin, levelMax, cnMin } = verdict;
  return (
    <span className={styles.got} data-turn={change}>
      {got} of {wanted}
      {got > 0 ? (
        <span className="quiet">
          {" "}
          · {levelRangeWords(levelMin, levelMax)} · C/N {decimal(cnMin)} dB
        </span>
      ) : null}
    </span>
  );
}
