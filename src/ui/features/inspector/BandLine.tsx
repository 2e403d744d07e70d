import type { Band } from "../../../signal/band.ts";
import { bandCountWords, carriersWords } from "../../canvas/bands.ts";
import { LevelFigure } from "../../kit/asked/LevelFigure.tsx";
import { extremesOf, type Question, questionAt } from "../../kit/asked/question.ts";
import { decimal } from "../../kit/format.ts";

/** A band at a port in words; its lowest and highest level lead to how they came about. */
export function BandLine({ band, at }: { readonly band: Band; readonly at: Question["at"] }) {
  const ends = extremesOf(band);
  const words = bandCountWords(band);
  if (!ends) return <li>{words}</li>;
  const low = decimal(band.level[ends.weakest], 0);
  const high = decimal(band.level[ends.strongest], 0);
  const isOne = low === high;
  const all = carriersWords(band);
  return (
    <li>
      {words},{" "}
      <LevelFigure
        about={`${isOne ? "Level" : "Lowest level"}, ${words}`}
        question={() => questionAt(at, band, ends.weakest, `the weakest of ${all}`)}
      >
        {low}
        {isOne ? " dBµV" : ""}
      </LevelFigure>
      {isOne ? null : (
        <>
          –
          <LevelFigure
            about={`Highest level, ${words}`}
            question={() => questionAt(at, band, ends.strongest, `the strongest of ${all}`)}
          >
            {high} dBµV
          </LevelFigure>
        </>
      )}
    </li>
  );
}
