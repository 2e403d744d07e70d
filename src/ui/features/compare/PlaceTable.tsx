import { useState } from "react";
import type { ServiceVerdict } from "../../../findings/finding.ts";
import type { PlaceChange, ServiceChange } from "../../../remedies/compare.ts";
import type { Site } from "../../../remedies/site.ts";
import { levelRangeWords } from "../../../sentences/figures.ts";
import { verdictSentence } from "../../../sentences/verdict.ts";
import { SERVICE_NAMES } from "../../../signal/carrier.ts";
import { plural } from "../../../words/plural.ts";
import { decimal } from "../../kit/format.ts";
import { ScrollBox } from "../../kit/ScrollBox.tsx";
import { type Compared, inOrder, verdictIn } from "../../kit/told/sides.ts";
import { TurnMark } from "../../kit/told/TurnMark.tsx";

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
        <ScrollBox className="compare-scroll" label="Before and after, place by place">
          <table className="compare-table">
            <thead>
              <tr>
                <th scope="col">Place</th>
                <th scope="col">Service</th>
                <th scope="col">{compared.names[0]}</th>
                <th scope="col">{compared.names[1]}</th>
              </tr>
            </thead>
            {shown.map((place) => (
              <PlaceRows key={place.part} place={place} compared={compared} />
            ))}
          </table>
        </ScrollBox>
      ) : null}
      {same > 0 ? (
        <button type="button" className="link" aria-expanded={isAll} onClick={() => setAll(!isAll)}>
          {isAll ? "Show only changes" : unchangedWords(same)}
        </button>
      ) : null}
    </section>
  );
}

function PlaceRows({ place, compared }: { readonly place: PlaceChange; readonly compared: Compared }) {
  const { services, label, change, part } = place;
  return (
    <tbody>
      <tr>
        <th scope="rowgroup" rowSpan={services.length + 1}>
          {label}
          <TurnMark change={change} />
        </th>
        <td />
        <td>{sentenceIn(compared.before, part)}</td>
        <td>{sentenceIn(compared.after, part)}</td>
      </tr>
      {services.map((service) => (
        <ServiceRow key={service.service} service={service} />
      ))}
    </tbody>
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

function ServiceRow({ service }: { readonly service: ServiceChange }) {
  return (
    <tr className="compare-service">
      <th scope="row">{SERVICE_NAMES[service.service]}</th>
      <Got verdict={service.before} />
      <Got verdict={service.after} change={service.change} />
    </tr>
  );
}

type GotProps = { readonly verdict: ServiceVerdict | undefined; readonly change?: ServiceChange["change"] };

function Got({ verdict, change }: GotProps) {
  if (!verdict) return <td className="quiet">–</td>;
  const { got, wanted, levelMin, levelMax, cnMin } = verdict;
  return (
    <td className="number" data-turn={change}>
      {got} of {wanted}
      {got > 0 ? (
        <span className="quiet">
          {" "}
          · {levelRangeWords(levelMin, levelMax)} · C/N {decimal(cnMin)} dB
        </span>
      ) : null}
    </td>
  );
}
