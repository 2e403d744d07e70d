import type { PartRecord } from "../../../../evaluate/evaluation.ts";
import { numeral } from "../../../../words/numbers.ts";
import { LevelFigure } from "../../../kit/asked/LevelFigure.tsx";
import { questionAt } from "../../../kit/asked/question.ts";
import { decimal, megahertz, signed } from "../../../kit/format.ts";
import { Table } from "../../../kit/Table.tsx";
import type { Column } from "../../../kit/tableShape.ts";
import { type AerialLine, aerialFigures } from "./aerialFigures.ts";

/** For an aerial: how its level comes of the field, the gain and the frequency. */
export function AerialSection({ record }: { readonly record: PartRecord }) {
  const figures = aerialFigures(record);
  if (!figures) return null;
  const { fromField, gainDbi, lines } = figures;
  const offset: Column<AerialLine> = {
    head: "Offset",
    unit: "dB",
    isNumber: true,
    cell: (line) => signed(fromField ? line.offsetDb : 0),
  };
  const direction: Column<AerialLine> = {
    head: "Direction",
    unit: "dB",
    isNumber: true,
    cell: (line) => signed(-line.aimLossDb),
  };
  const columns: readonly Column<AerialLine>[] = [
    {
      head: "Carrier",
      cell: (line) => (
        <>
          {line.name} <span className="quiet">{megahertz(line.frequencyMHz)} MHz</span>
          {line.band.origin.transmitter === undefined ? null : ` ${line.band.origin.transmitter}`}
        </>
      ),
    },
    { head: "Field", unit: "dBµV/m", isNumber: true, cell: (line) => decimal(line.fieldDbuvPerM) },
    { head: "Aerial", unit: "dB", isNumber: true, cell: (line) => signed(line.factorDb) },
    ...(lines.some(isOffset) ? [offset] : []),
    ...(lines.some(isTurnedAway) ? [direction] : []),
    {
      head: "Level",
      unit: "dBµV",
      isNumber: true,
      cell: (line) => (
        <LevelFigure
          about={`Level of ${line.name}`}
          question={() => questionAt({ part: record.part.id, port: line.port }, line.band, line.i)}
        >
          {decimal(line.levelDbuv)}
        </LevelFigure>
      ),
    },
  ];
  return (
    <section aria-label="Level from the field">
      <h3>Level from the field</h3>
      <Table
        label="Field and level"
        columns={columns}
        rows={lines}
        keyOf={(line) => `${line.band.origin.key} ${line.frequencyMHz}`}
      />
      <p className="quiet small">
        Level = field + gain ({decimal(gainDbi)} dBi) − 20·log₁₀(MHz) + {numeral(31.5)}: the same field gives
        less at higher frequency, for an aerial of given gain shrinks with the wavelength.
        {fromField ? "" : " The level was given as measured; the field is what it would take to make it."}
      </p>
    </section>
  );
}

function isOffset({ offsetDb }: AerialLine): boolean {
  return Math.abs(offsetDb) >= 0.05;
}

function isTurnedAway({ aimLossDb }: AerialLine): boolean {
  return aimLossDb >= 0.05;
}
