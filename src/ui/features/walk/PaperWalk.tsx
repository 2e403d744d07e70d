import type { Evaluation } from "../../../evaluate/evaluation.ts";
import { endWords } from "../origin/endWords.ts";
import { LevelDiagram } from "../origin/LevelDiagram.tsx";
import { StepTable } from "../origin/StepTable.tsx";
import { boundsOfBranch } from "./SupplyBody.tsx";
import { SupplyDiagram } from "./SupplyDiagram.tsx";
import { SupplyTable } from "./SupplyTable.tsx";
import type { ShownSignal, ShownSupply, ShownWalk } from "./walk.ts";
import { wayOrigin } from "./wayOrigin.ts";
import "../origin/origin.css";
import "./walk.css";

/** A walk as it is printed. */
export function PaperWalk({
  shown,
  evaluation,
}: {
  readonly shown: ShownWalk;
  readonly evaluation: Evaluation;
}) {
  const { place } = shown.walking;
  return (
    <section className="paper-origin">
      <h2>
        {shown.view === "signal" ? "The way of the signal to" : "The supply and the commands of"}{" "}
        {place.label}
      </h2>
      {shown.view === "signal" ? (
        <PaperSignal shown={shown} evaluation={evaluation} />
      ) : (
        <PaperSupply shown={shown} evaluation={evaluation} />
      )}
    </section>
  );
}

function PaperSignal({
  shown,
  evaluation,
}: {
  readonly shown: ShownSignal;
  readonly evaluation: Evaluation;
}) {
  const { ways, walking, route, way } = shown;
  return ways.map((one) => {
    // The route is that of the carrier followed; the others end as they do.
    const found = wayOrigin(evaluation, one, one === way ? route : { ...route, stops: [] }, walking);
    return (
      <div key={`${one.carrier.origin}#${one.carrier.index}`} className="paper-item">
        <h3>
          {found.carrier}: {one.got ? "arrives" : "is lost"}
        </h3>
        {one.loss ? <p>{one.loss.words}</p> : null}
        {one.end ? endWords(found).map((sentence) => <p key={sentence}>{sentence}</p>) : null}
        {one === way && found.steps.length > 0 ? (
          <LevelDiagram answer={found} width={680} height={200} />
        ) : null}
        {found.steps.length > 0 ? <StepTable answer={found} isOnPaper /> : null}
      </div>
    );
  });
}

function PaperSupply({
  shown,
  evaluation,
}: {
  readonly shown: ShownSupply;
  readonly evaluation: Evaluation;
}) {
  const { branch, route, commands, silence } = shown;
  if (branch.length === 0) return <p>{silence}</p>;
  return (
    <>
      <SupplyDiagram
        branch={branch}
        stops={route.stops}
        bounds={boundsOfBranch(evaluation, branch)}
        stop={-1}
        trouble={route.trouble}
        width={680}
        height={200}
      />
      <SupplyTable branch={branch} stops={route.stops} stop={-1} />
      <ul>
        {commands.map((stop) => (
          <li key={`${stop.part}.${stop.port}`}>{stop.words}</li>
        ))}
      </ul>
    </>
  );
}
