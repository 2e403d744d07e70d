import { readingWords } from "../../remedies/faults/readingWords.ts";
import { meterShows, requestOfKey } from "../../store/trainingMeter.ts";
import { usePractice } from "../../store/trainingSession.ts";
import { QUANTITY_WORDS } from "./Meter.tsx";
import { placeWords } from "./picking.ts";
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
          const request = requestOfKey(session.opened, asked);
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
                  {QUANTITY_WORDS[quantity]} at {placeWords(session, [part, port])}
                  {asked ? `, ${asked}` : ""}:
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
