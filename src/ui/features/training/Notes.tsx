import { requestOfKey } from "../../../remedies/training/judge.ts";
import {
  portPhrase,
  QUANTITY_LABELS,
  readingWords,
  requestChoiceWords,
} from "../../../sentences/faults/readingWords.ts";
import { meterShows } from "../../../store/trainingMeter.ts";
import { usePractice } from "../../../store/trainingSession.ts";
import { type CaseProps, useCaseProgress } from "./useCase.ts";

/** What was measured so far, the latest first; pressing a line brings the meter back there. */
export function Notes({ session }: CaseProps) {
  const { measured } = useCaseProgress(session);
  return (
    <section aria-label="Notes">
      <h2>Notes</h2>
      {measured.length === 0 ? <p className="quiet">What you measure is noted here.</p> : null}
      <ol className="notes" reversed>
        {measured.toReversed().map(({ part, port, quantity, asked }) => {
          const request = requestOfKey(session.opened.design, asked);
          const { actual } = meterShows(session.opened, [part, port], quantity, request);
          return (
            <li key={`${part}/${port}/${quantity}/${asked}`}>
              <button
                type="button"
                className="note-press"
                onClick={() =>
                  usePractice.setState({ place: [part, port], quantity, asked: request, isMeasured: true })
                }
              >
                <span>
                  {QUANTITY_LABELS[quantity]} at {portPhrase(session.opened.design, [part, port])}
                  {request ? `, ${requestChoiceWords(request)}` : ""}:
                </span>{" "}
                <strong>{actual ? readingWords(actual) : "nothing to connect to"}</strong>
              </button>
            </li>
          );
        })}
      </ol>
    </section>
  );
}
