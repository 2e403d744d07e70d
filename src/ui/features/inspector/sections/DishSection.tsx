import type { PartRecord } from "../../../../evaluate/evaluation.ts";
import { dishOptionsOf } from "../../../../parts/dishBands.ts";
import type { DishOptions } from "../../../../parts/dishOptions.ts";
import { dishAim } from "../../../../parts/linkBudget.ts";
import { useApp } from "../../../../store/app.ts";
import { LevelFigure } from "../../../kit/asked/LevelFigure.tsx";
import { questionAt } from "../../../kit/asked/question.ts";
import { decimal, megahertz, signed } from "../../../kit/format.ts";
import { type Budget, converted, weakestBudget } from "./dishFigures.ts";
import { tiltWords } from "./dishWords.ts";
import { Fact, FactList } from "./FactList.tsx";
import { RainTable } from "./RainTable.tsx";

/** For a dish: how to set it up, the link budget of its weakest transponder, and the rain that it stands. */
export function DishSection({ record }: { readonly record: PartRecord }) {
  const o = dishOptionsOf(record);
  if (!o) return null;
  const budget = weakestBudget(record, o);
  return (
    <>
      <Aim o={o} />
      {budget ? <LinkBudget record={record} budget={budget} /> : null}
      {budget ? <RainTable record={record} o={o} budget={budget} /> : null}
    </>
  );
}

function Aim({ o }: { readonly o: DishOptions }) {
  const aim = dishAim(o);
  if (aim.elevationDeg <= 0) {
    return (
      <section aria-label="Alignment">
        <h3>Alignment</h3>
        <p className="state bad">The satellite is below the horizon of this site.</p>
      </section>
    );
  }
  return (
    <section aria-label="Alignment">
      <h3>Alignment</h3>
      <FactList>
        <Fact term="Azimuth" value={`${decimal(aim.azimuthDeg)}°`} note="from true north, clockwise" />
        <Fact term="Elevation" value={`${decimal(aim.elevationDeg)}°`} />
        <Fact
          term="Bracket setting"
          value={`${decimal(aim.mountElevationDeg)}°`}
          note={`elevation less the offset of ${decimal(o.offsetAngleDeg)}°`}
        />
        <Fact
          term="LNB skew"
          value={tiltWords(aim.skewDeg)}
          note="seen from behind the dish, looking at the satellite"
        />
        <Fact term="Distance" value={`${megahertz(Math.round(aim.rangeKm))} km`} />
      </FactList>
    </section>
  );
}

function LinkBudget({ record, budget }: { readonly record: PartRecord; readonly budget: Budget }) {
  const evaluation = useApp((s) => s.evaluation);
  const behind = converted(evaluation, record, budget);
  const { carrier, band, i } = budget;
  const port = record.ports[0]?.id ?? "";
  return (
    <section aria-label="Link budget">
      <h3>Link budget</h3>
      <p className="small">
        Of the weakest transponder, {carrier.name}: it needs {decimal(budget.requiredDb)} dB.
      </p>
      <FactList>
        <Fact term="EIRP" value={`${decimal(budget.eirpDbw)} dBW`} />
        <Fact term="Free-space loss" value={`${signed(-budget.freeSpaceLossDb)} dB`} />
        <Fact term="Dish gain" value={`${signed(budget.gainDbi)} dBi`} />
        <Fact term="Air, rain, pointing, obstacles" value={`${signed(-budget.otherLossDb)} dB`} />
        <Fact
          term="At the feed"
          value={
            <LevelFigure
              about="Level at the feed"
              question={() => questionAt({ part: record.part.id, port }, band, i, "the weakest transponder")}
            >
              {decimal(budget.feedDbuv)} dBµV
            </LevelFigure>
          }
          note={`C/N ${decimal(budget.feedCnDb)} dB against the noise of the sky alone`}
        />
        {behind ? (
          <Fact
            term="Behind the LNB"
            value={
              <LevelFigure
                about="Level behind the LNB"
                question={() =>
                  questionAt(
                    { part: behind.part, port: behind.port },
                    behind.band,
                    behind.i,
                    "the weakest transponder",
                  )
                }
              >
                {decimal(behind.levelDbuv)} dBµV
              </LevelFigure>
            }
            note={`C/N ${decimal(behind.cnDb)} dB`}
          />
        ) : null}
      </FactList>
    </section>
  );
}
