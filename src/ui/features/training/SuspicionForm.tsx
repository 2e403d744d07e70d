import { useMemo, useState } from "react";
import { partById, quoted } from "../../../design/lookup.ts";
import type { FaultType } from "../../../remedies/faults/fault.ts";
import { judge, readingAgainst, requestOfKey } from "../../../remedies/training/judge.ts";
import { addNamed, giveUp, type TakenMeasurement } from "../../../remedies/training/progress.ts";
import { FAULT_WORDS } from "../../../sentences/faults/faultWords.ts";
import { againstSentence, VERDICT_WORDS } from "../../../sentences/training/outcomeWords.ts";
import { useTraining } from "../../../store/training.ts";
import { meterShows } from "../../../store/trainingMeter.ts";
import { type PracticeSession, usePractice } from "../../../store/trainingSession.ts";
import { suspectPart, typesAt } from "./picking.ts";
import { type CaseProps, useCaseProgress } from "./useCase.ts";

/** Names a part and what is wrong with it, and hears whether that is so. */
export function SuspicionForm({ session }: CaseProps) {
  const { design } = session.opened;
  const { suspect, suspectedType } = usePractice();
  const types = useMemo(() => (suspect ? typesAt(session, suspect) : []), [session, suspect]);
  const canAnswer = suspect !== null && suspectedType !== null;
  return (
    <section aria-label="Name the fault">
      <h2>Name the fault</h2>
      <form
        className="suspicion-form"
        onSubmit={(event) => {
          event.preventDefault();
          if (suspect && suspectedType) answer(session, suspect, suspectedType);
        }}
      >
        <label className="faults-field">
          <span>
            The part <span className="quiet small">(or tap it)</span>
          </span>
          <select
            className="field-input"
            value={suspect ?? ""}
            onChange={(event) => suspectPart(event.target.value)}
          >
            {suspect ? null : <option value="">Choose…</option>}
            {design.parts.map((part) => (
              <option key={part.id} value={part.id}>
                {part.label || part.id}
              </option>
            ))}
          </select>
        </label>
        <label className="faults-field">
          <span>What is wrong there</span>
          <select
            className="field-input"
            value={suspectedType ?? ""}
            disabled={suspect === null}
            onChange={(event) =>
              usePractice.setState({ suspectedType: types.find((t) => t === event.target.value) ?? null })
            }
          >
            <option value="">Choose…</option>
            {types.map((type) => (
              <option key={type} value={type}>
                {FAULT_WORDS[type].name}
              </option>
            ))}
          </select>
        </label>
        <div className="button-row">
          <button type="submit" className="button main" disabled={!canAnswer}>
            Submit
          </button>
          <GiveUp session={session} />
        </div>
      </form>
      <Named session={session} />
    </section>
  );
}

function answer(session: PracticeSession, part: string, type: FaultType): void {
  const against = (measured: readonly TakenMeasurement[]) =>
    readingAgainst(session.opened, { part, type }, measured);
  const verdict = judge(session.opened, { part, type });
  useTraining
    .getState()
    .update(session.key, (progress) =>
      addNamed(
        progress,
        { part, type },
        verdict,
        verdict === "wrong" ? against(progress.measured) : undefined,
      ),
    );
}

/** Asks once more: being shown the fault ends the case. */
function GiveUp({ session }: CaseProps) {
  const [isAsking, setAsking] = useState(false);
  if (!isAsking)
    return (
      <button type="button" className="button" onClick={() => setAsking(true)}>
        Give up
      </button>
    );
  return (
    <button
      type="button"
      className="button danger"
      onClick={() => useTraining.getState().update(session.key, giveUp)}
    >
      Show the fault, without points
    </button>
  );
}

/** Faults named so far: all of them missed, or the case would be closed. */
function Named({ session }: CaseProps) {
  const { named } = useCaseProgress(session);
  return (
    <ul className="named" aria-live="polite">
      {named.map(({ part, type, verdict, against }) => (
        <li key={part + type} className="small">
          <span className={verdict === "wrong" ? "badge error" : "badge warning"}>
            {VERDICT_WORDS[verdict]}
          </span>{" "}
          {quoted(partById(session.opened.design, part))}: {FAULT_WORDS[type].name}.
          {against ? <Against session={session} measured={against} /> : null}
        </li>
      ))}
    </ul>
  );
}

/** The trainee's own reading that had excluded it. */
function Against({ session, measured }: CaseProps & { readonly measured: TakenMeasurement }) {
  const { opened } = session;
  const { part, port, quantity, asked } = measured;
  const request = requestOfKey(opened.design, asked);
  const { actual } = meterShows(opened, [part, port], quantity, request);
  return actual ? (
    <p>{againstSentence(opened.design, { at: [part, port], quantity, asked: request }, actual)}</p>
  ) : null;
}
