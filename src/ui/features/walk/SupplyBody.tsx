import { Check, X } from "lucide-react";
import { useMemo } from "react";
import type { Evaluation } from "../../../evaluate/evaluation.ts";
import type { SupplyStep } from "../../../findings/walk/supply.ts";
import { plainLabelOf } from "../../../sentences/phrases.ts";
import type { ToldCommandStop } from "../../../sentences/walk/command.ts";
import { useApp } from "../../../store/app.ts";
import { changeWalk } from "../../kit/asked/walking.ts";
import { WhoIsOnTable } from "../../kit/told/WhoIsOnTable.tsx";
import { useSize } from "../../kit/useSize.ts";
import { SupplyDiagram } from "./SupplyDiagram.tsx";
import { SupplyTable } from "./SupplyTable.tsx";
import { goToPart, goToStop } from "./steps.ts";
import { thresholdAt } from "./stops.ts";
import { voltsBounds } from "./supplyDiagram.ts";
import type { ShownSupply } from "./walk.ts";

/** The supply from a receiver up to what it feeds, and what becomes of its commands. */
export function SupplyBody({ shown }: { readonly shown: ShownSupply }) {
  const evaluation = useApp((s) => s.evaluation);
  const { source, branch, steps, walking, silence } = shown;
  const giver = source && plainLabelOf(evaluation, source.part);
  return (
    <div className="origin-body">
      <div className="walk-carriers">
        {giver && source.part !== walking.place.part ? (
          <p>The supply on this line comes from “{giver}”.</p>
        ) : null}
        {branch.length === 0 ? <p>{silence}</p> : <BranchChoice shown={shown} />}
      </div>
      {branch.length > 0 ? <Branch shown={shown} /> : null}
      <LivesOnLine branch={branch} />
      <Commands stops={shown.commands} />
      {steps.length > 0 ? (
        <details className="walk-lines">
          <summary>The way in sentences</summary>
          <ol>
            {steps.map((step, n) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a sentence is its place in the text.
              <li key={n}>{step.words}</li>
            ))}
          </ol>
        </details>
      ) : null}
    </div>
  );
}

/** Where the supply forks, the branch that is followed. */
function BranchChoice({ shown }: { readonly shown: ShownSupply }) {
  const { ends, steps, branch } = shown;
  const { record } = useApp((s) => s.evaluation);
  if (ends.length < 2) return null;
  return (
    <fieldset className="chips">
      <legend className="unseen">Branches</legend>
      {ends.flatMap((n) => {
        const step = steps[n];
        if (!step) return [];
        return [
          <button
            key={n}
            type="button"
            className="chip"
            aria-pressed={step === branch.at(-1)}
            onClick={() => changeWalk({ branch: step.part })}
          >
            up to {record(step.part)?.part.label || step.part}
          </button>,
        ];
      })}
    </fieldset>
  );
}

function Branch({ shown }: { readonly shown: ShownSupply }) {
  const evaluation = useApp((s) => s.evaluation);
  const [attach, size] = useSize();
  const { branch, route, stop } = shown;
  const bounds = useMemo(() => boundsOfBranch(evaluation, branch), [evaluation, branch]);
  return (
    <>
      <div className="origin-figure">
        <div className="origin-plot" ref={attach}>
          {size && size.width > 200 ? (
            <SupplyDiagram
              branch={branch}
              stops={route.stops}
              bounds={bounds}
              stop={stop}
              trouble={route.trouble}
              width={size.width}
              height={size.height}
              onStop={goToStop}
            />
          ) : null}
        </div>
        <p className="origin-legend small" aria-hidden="true">
          {branch.every((s) => s.volts13 === s.volts18) ? (
            <span className="key level">volts</span>
          ) : (
            <>
              <span className="key level">for horizontal</span>
              <span className="key noise">for vertical</span>
            </>
          )}
        </p>
      </div>
      <div className="origin-steps">
        <SupplyTable branch={branch} stops={route.stops} stop={stop} onStop={goToStop} />
      </div>
    </>
  );
}

/** Of the last part on the branch that lives on the line: what it gets by who is on. */
function LivesOnLine({ branch }: Pick<ShownSupply, "branch">) {
  const { record } = useApp((s) => s.evaluation);
  const part = branch.findLast((step) => step.needsVolts !== undefined)?.part;
  const fed = part === undefined ? undefined : record(part);
  return fed && !fed.power.selfPowered ? <WhoIsOnTable key={part} record={fed} isNamed /> : null;
}

export function boundsOfBranch(evaluation: Evaluation, branch: readonly SupplyStep[]) {
  return voltsBounds(branch, (step) => thresholdAt(evaluation, step));
}

/** What is asked of every switch that hears it, and whether it is done. */
export function Commands({ stops }: { readonly stops: readonly ToldCommandStop[] }) {
  if (stops.length === 0) return null;
  return (
    <section className="walk-commands" aria-label="Commands">
      <h3>Commands</h3>
      <ul className="command-list">
        {stops.map((stop) => (
          <li key={`${stop.part}.${stop.port}`}>
            <button type="button" className="verdict-press" onClick={() => goToPart(stop.part)}>
              <span className={stop.granted ? "verdict-mark ok" : "verdict-mark bad"}>
                {stop.granted ? <Check size={16} aria-hidden /> : <X size={16} aria-hidden />}
                <span className="unseen">{stop.granted ? "Done: " : "Not done: "}</span>
              </span>
              <span>{stop.words}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
