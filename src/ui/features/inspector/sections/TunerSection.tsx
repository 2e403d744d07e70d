import type { PartRecord } from "../../../../evaluate/evaluation.ts";
import { type TunerCount, type TunerReception, tunersOf } from "../../../../findings/tuners.ts";
import { useApp } from "../../../../store/app.ts";
import { LevelFigure } from "../../../kit/asked/LevelFigure.tsx";
import { questionAt } from "../../../kit/asked/question.ts";
import { decimal } from "../../../kit/format.ts";
import { ScrollBox } from "../../../kit/ScrollBox.tsx";
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
      <ScrollBox className="figures-scroll" label="What the tuners get">
        <table className="figures-table">
          <thead>
            <tr>
              <th scope="col">Tuner</th>
              <th scope="col">Input</th>
              {hasUserBands ? <th scope="col">User band</th> : null}
              <th scope="col">
                Level <span className="quiet">dBµV</span>
              </th>
              <th scope="col">Alone</th>
              <th scope="col">Together</th>
            </tr>
          </thead>
          <tbody>
            {tuners.map((tuner) => (
              <tr key={tuner.number}>
                <th scope="row">{tuner.number}</th>
                <td>{record.ports.find((p) => p.id === tuner.input)?.label ?? tuner.input}</td>
                {hasUserBands ? <td className="number">{tuner.userBand ?? "none"}</td> : null}
                <td className="number">
                  <Levels record={record} tuner={tuner} />
                </td>
                <Count count={tuner.alone} />
                <Count count={tuner.together} />
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollBox>
      <p className="quiet small">
        Transponders that it can turn to: alone, if nobody else on its line asked for anything; together,
        while all ask for what they ask for now.
      </p>
    </section>
  );
}

function Count({ count }: { readonly count: TunerCount }) {
  return (
    <td className={count.got < count.of ? "number short-of" : "number"}>
      {count.got} of {count.of}
    </td>
  );
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
