import type { PartRecord } from "../../../../evaluate/evaluation.ts";
import { LevelFigure } from "../../../kit/asked/LevelFigure.tsx";
import { questionAt } from "../../../kit/asked/question.ts";
import { decimal, megahertz, signed } from "../../../kit/format.ts";
import { ScrollBox } from "../../../kit/ScrollBox.tsx";
import { type AerialLine, aerialFigures } from "./aerialFigures.ts";

/** For an aerial: how its level comes of the field, the gain and the frequency. */
export function AerialSection({ record }: { readonly record: PartRecord }) {
  const figures = aerialFigures(record);
  if (!figures) return null;
  const { fromField, gainDbi, lines } = figures;
  return (
    <section aria-label="Level from the field">
      <h3>Level from the field</h3>
      <ScrollBox className="figures-scroll" label="Field and level">
        <table className="figures-table">
          <thead>
            <tr>
              <th scope="col">Carrier</th>
              <th scope="col">
                Field <span className="quiet">dBµV/m</span>
              </th>
              <th scope="col">
                Aerial <span className="quiet">dB</span>
              </th>
              {lines.some(isOffset) ? (
                <th scope="col">
                  Offset <span className="quiet">dB</span>
                </th>
              ) : null}
              <th scope="col">
                Level <span className="quiet">dBµV</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {lines.map((line) => (
              <tr key={line.frequencyMHz}>
                <th scope="row">
                  {line.name} <span className="quiet">{megahertz(line.frequencyMHz)} MHz</span>
                </th>
                <td className="number">{decimal(line.fieldDbuvPerM)}</td>
                <td className="number">{signed(line.factorDb)}</td>
                {lines.some(isOffset) ? (
                  <td className="number">{signed(fromField ? line.offsetDb : 0)}</td>
                ) : null}
                <td className="number">
                  <LevelFigure
                    about={`Level of ${line.name}`}
                    question={() => questionAt({ part: record.part.id, port: line.port }, line.band, line.i)}
                  >
                    {decimal(line.levelDbuv)}
                  </LevelFigure>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollBox>
      <p className="quiet small">
        Level = field + gain ({decimal(gainDbi)} dBi) − 20·log₁₀(MHz) + 31.5: the same field gives less at
        higher frequency, for an aerial of given gain shrinks with the wavelength.
        {fromField ? "" : " The level was given as measured; the field is what it would take to make it."}
      </p>
    </section>
  );
}

function isOffset({ offsetDb }: AerialLine): boolean {
  return Math.abs(offsetDb) >= 0.05;
}
