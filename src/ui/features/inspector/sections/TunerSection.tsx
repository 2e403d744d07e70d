import type { PartRecord } from "../../../../evaluate/evaluation.ts";
import { type TunerCount, type TunerReception, tunersOf } from "../../../../findings/tuners.ts";
import { useApp } from "../../../../store/app.ts";
import { LevelFigure } from "../../../kit/asked/LevelFigure.tsx";
import { questionAt } from "../../../kit/asked/question.ts";
import { decimal } from "../../../kit/format.ts";
import { Table } from "../../../kit/Table.tsx";
import type { Column } from "../../../kit/tableShape.ts";
import { type InputCarrier, tunerLevels } from "./tunerLevels.ts";

/** For a satellite receiver, tuner by tuner: what it gets alone and together with the others, and at which level. */
export function TunerSection({ record }: { readonly record: PartRecord }) {
  const evaluation = useApp((s) => s.evaluation);
  if (!record.kind.reception) return null;
  const tuners = tunersOf(
    record,
    evaluation.records.filter((r) => r.kind.family === "receive"),
  );
  if (tuners.length === 0) return null;
  const hasUserBands = tuners.some((t) => t.userBand !== undefined);
  return (
    <section aria-label="Tuners">
      <h3>Tuners</h3>
      <Table
        label="What the tuners get"
        columns={[
          { head: "Tuner", cell: (tuner) => tuner.number },
          {
            head: "Input",
            cell: (tuner) => record.ports.find((p) => p.id === tuner.input)?.label ?? tuner.input,
          },
          ...(hasUserBands ? [USER_BAND] : []),
          {
            head: "Level",
            unit: "dBµV",
            isNumber: true,
            cell: (tuner) => <Levels record={record} tuner={tuner} />,
          },
          countColumn("Alone", (tuner) => tuner.alone),
          countColumn("Together", (tuner) => tuner.together),
        ]}
        rows={tuners}
        keyOf={(tuner) => tuner.number}
      />
      <p className="quiet small">
        Transponders that each tuner can tune. Alone: if nobody else on the line asked for anything. Together:
        while all ask for what they ask for now.
      </p>
    </section>
  );
}

const USER_BAND: Column<TunerReception> = {
  head: "User band",
  isNumber: true,
  cell: (tuner) => tuner.userBand ?? "none",
};

function countColumn(head: string, of: (tuner: TunerReception) => TunerCount): Column<TunerReception> {
  return {
    head,
    isNumber: true,
    isShort: (tuner) => of(tuner).got < of(tuner).of,
    cell: (tuner) => `${of(tuner).got} of ${of(tuner).of}`,
  };
}

function Levels({ record, tuner }: { readonly record: PartRecord; readonly tuner: TunerReception }) {
  const levels = tunerLevels(record, tuner);
  if (!levels) return "–";
  const { weakest, strongest } = levels;
  const end = (name: string, carrier: InputCarrier) => (
    <LevelFigure
      about={`${name} level at tuner ${tuner.number}`}
      question={() =>
        questionAt(
          { part: record.part.id, port: tuner.input },
          carrier.band,
          carrier.i,
          `the ${name.toLowerCase()} at tuner ${tuner.number} now`,
        )
      }
    >
      {decimal(carrier.levelDbuv, 0)}
    </LevelFigure>
  );
  if (decimal(weakest.levelDbuv, 0) === decimal(strongest.levelDbuv, 0)) return end("Weakest", weakest);
  return (
    <>
      {end("Weakest", weakest)}–{end("Strongest", strongest)}
    </>
  );
}
