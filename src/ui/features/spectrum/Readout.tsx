import { Footprints } from "lucide-react";
import { MER_TERMS, merShown } from "../../../sentences/merWords.ts";
import { plainLabelOf } from "../../../sentences/phrases.ts";
import { useApp } from "../../../store/app.ts";
import { decimal, megahertz } from "../../kit/format.ts";
import { type CarrierRow, stateWords } from "./rows.ts";

/** The carrier under the cursor, in figures. */
export function Readout({
  row,
  onAsk,
}: {
  readonly row: CarrierRow | undefined;
  readonly onAsk: (row: CarrierRow) => void;
}) {
  const evaluation = useApp((s) => s.evaluation);
  if (!row) {
    return (
      <p className="readout quiet">
        Point at a carrier, or press the arrow keys in the spectrum, to read its figures.
      </p>
    );
  }
  const label = (part: string) => plainLabelOf(evaluation, part);
  return (
    <div className="readout-line">
      <dl className="readout">
        <Figure term={row.bandName} value={row.name} />
        <Figure term="here" value={`${megahertz(row.hereMHz)} MHz`} />
        {row.airMHz > 0 && Math.abs(row.airMHz - row.hereMHz) > 0.001 ? (
          <Figure term="on air" value={`${megahertz(row.airMHz)} MHz`} />
        ) : null}
        <Figure term="level" value={`${decimal(row.level)} dBµV`} />
        <Figure term="C/N" value={`${decimal(row.cnDb)} dB`} />
        {Number.isFinite(row.ciDb) ? <Figure term="C/I" value={`${decimal(row.ciDb)} dB`} /> : null}
        <Figure
          term={MER_TERMS[merShown(evaluation, row.band.origin, row.cniDb)]}
          value={`${decimal(row.cniDb)} dB`}
        />
        <Figure term="needs" value={`${decimal(row.requiredDb)} dB`} />
        <Figure term="state" value={stateWords(row, label)} />
      </dl>
      <button type="button" className="button" onClick={() => onAsk(row)}>
        <Footprints size={16} aria-hidden /> How this level came about
      </button>
    </div>
  );
}

function Figure({ term, value }: { readonly term: string; readonly value: string }) {
  return (
    <div>
      <dt>{term}</dt>
      <dd className="number">{value}</dd>
    </div>
  );
}
