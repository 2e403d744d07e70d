import { TUNER_NOISE_FIGURE_DB } from "../../../findings/tunerQuality.ts";
import { useApp } from "../../../store/app.ts";
import { numeralAsSet } from "../../../words/numbers.ts";
import { selectFromPane } from "../../canvas/reveal.ts";
import { decimal } from "../../kit/format.ts";
import type { WalkMarks } from "./LevelDiagram.tsx";
import type { LevelOrigin, OriginStep } from "./levelOrigin.ts";

/** Every part on the way, what it did, and what there is behind it. A press on a part shows it on the canvas. */
export function StepTable({
  answer,
  onPaper = false,
  walked,
}: {
  readonly answer: LevelOrigin;
  readonly onPaper?: boolean;
  /** On a walk: the present stop is marked, and a press on a part goes there. */
  readonly walked?: Pick<WalkMarks, "stop" | "onStop" | "trouble">;
}) {
  const chosen = useApp((s) => s.selection.parts);
  const isCurrent = (step: OriginStep, n: number) =>
    walked ? walked.stop === n : !onPaper && chosen.includes(step.part);
  // Without any interference C/(N+I) is C/N, and two columns less leave room for the words.
  const isDisturbed = answer.steps.some((step) => Number.isFinite(step.ciDb));
  return (
    <table className="step-table">
      <thead>
        <tr>
          <th scope="col">
            <span className="unseen">Step</span>#
          </th>
          <th scope="col">Part</th>
          <th scope="col">What it does</th>
          <Heading name="Level" unit="dBµV" />
          <Heading name="C/N" unit="dB" />
          {isDisturbed ? <Heading name="C/I" unit="dB" /> : null}
          {isDisturbed ? <Heading name="C/(N+I)" unit="dB" /> : null}
        </tr>
      </thead>
      <tbody>
        {answer.steps.map((step, n) => (
          <tr
            // biome-ignore lint/suspicious/noArrayIndexKey: a step is its place on the way.
            key={n}
            className={[step.cutHere ? "gone" : "", isCurrent(step, n) ? "current" : ""].join(" ")}
            aria-current={walked?.stop === n ? "step" : undefined}
          >
            <td className="number">{n + 1}</td>
            <th scope="row">
              {onPaper ? (
                step.label
              ) : (
                <button
                  type="button"
                  className="link"
                  onClick={() => (walked ? walked.onStop(n) : selectFromPane({ parts: [step.part] }))}
                >
                  {step.label}
                </button>
              )}
            </th>
            <td>
              {step.did.join(" · ")}
              {walked?.trouble?.at === n ? (
                <strong className={`trouble-words ${walked.trouble.kind}`}> ✕ {walked.trouble.mark}</strong>
              ) : null}
            </td>
            <Figures step={step} isDisturbed={isDisturbed} />
          </tr>
        ))}
        {answer.behindTunerDb === undefined ? null : (
          <tr>
            <td />
            <th scope="row">Tuner</th>
            <td colSpan={isDisturbed ? 4 : 2}>
              adds its own noise (noise figure {numeralAsSet(TUNER_NOISE_FIGURE_DB)} dB)
            </td>
            <td className="number">{decimal(answer.behindTunerDb)}</td>
          </tr>
        )}
      </tbody>
    </table>
  );
}

function Heading({ name, unit }: { readonly name: string; readonly unit: string }) {
  return (
    <th scope="col" className="figure">
      {name} <span className="quiet">{unit}</span>
    </th>
  );
}

function Figures({ step, isDisturbed }: { readonly step: OriginStep; readonly isDisturbed: boolean }) {
  return (
    <>
      <td className="number">{decimal(step.levelDbuv)}</td>
      <td className="number">{decimal(step.cnDb)}</td>
      {isDisturbed ? <td className="number">{decimal(step.ciDb)}</td> : null}
      {isDisturbed ? <td className="number">{decimal(step.cniDb)}</td> : null}
    </>
  );
}
