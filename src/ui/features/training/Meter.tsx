import { Gauge } from "lucide-react";
import { useMemo } from "react";
import type { PortRef } from "../../../design/design.ts";
import { pointsOf } from "../../../remedies/faults/points.ts";
import { QUANTITIES } from "../../../remedies/faults/reading.ts";
import { askedKey, requestsOf } from "../../../remedies/faults/requestChoice.ts";
import { portPhrase, QUANTITY_LABELS, requestChoiceWords } from "../../../sentences/faults/readingWords.ts";
import { meterShows } from "../../../store/trainingMeter.ts";
import { type PracticeSession, usePractice } from "../../../store/trainingSession.ts";
import { MeterResult } from "./MeterResult.tsx";
import { connectMeter, endsAt, isSkyPort, takeReading } from "./picking.ts";
import type { CaseProps } from "./useCase.ts";

/** The meter: where it is connected, what it is to show, what the receivers ask for meanwhile. */
export function Meter({ session }: CaseProps) {
  const { place, quantity } = usePractice();
  return (
    <section className="meter" aria-label="Meter">
      <h2>
        <Gauge size={17} aria-hidden /> Meter
      </h2>
      <PlaceField session={session} />
      {place ? <Ends session={session} place={place} /> : null}
      <fieldset className="segments">
        <legend className="unseen">What to measure</legend>
        {QUANTITIES.map((each) => (
          <label key={each} className="segment">
            <input
              className="unseen"
              type="radio"
              name="quantity"
              checked={quantity === each}
              onChange={() => usePractice.setState({ quantity: each, isMeasured: false })}
            />
            <span>{QUANTITY_LABELS[each]}</span>
          </label>
        ))}
      </fieldset>
      <RequestField session={session} />
      <Display session={session} />
    </section>
  );
}

function PlaceField({ session }: CaseProps) {
  const { design } = session.opened;
  const place = usePractice((s) => s.place);
  const points = useMemo(() => pointsOf(design), [design]);
  return (
    <label className="faults-field">
      <span>
        Connected to <span className="quiet small">(or tap a wire or a connector)</span>
      </span>
      <select
        className="field-input"
        value={place?.join("/") ?? ""}
        onChange={(event) => {
          const point = points.find(({ at }) => at.join("/") === event.target.value);
          connectMeter(point?.at ?? null);
        }}
      >
        <option value="">Nowhere yet</option>
        {points.map(({ at }) => (
          <option key={at.join("/")} value={at.join("/")}>
            {placeLabel(session, at)}
          </option>
        ))}
        {place && !points.some(({ at }) => at.join("/") === place.join("/")) ? (
          <option value={place.join("/")}>{placeLabel(session, place)}</option>
        ) : null}
      </select>
    </label>
  );
}

/** "TV socket of “Plate”": the article is left off in a list. */
function placeLabel({ opened }: PracticeSession, at: PortRef): string {
  return portPhrase(opened.design, at).replace(/^the /, "");
}

/** A plug has two sides, and what is at one may not be at the other. */
function Ends({ session, place }: { readonly session: PracticeSession; readonly place: PortRef }) {
  const ends = endsAt(session, place);
  if (ends.length < 2) return null;
  return (
    <fieldset className="ends">
      <legend className="unseen">Which end of the wire</legend>
      {ends.map((end) => (
        <label key={end.join("/")} className="segment">
          <input
            className="unseen"
            type="radio"
            name="end"
            checked={end.join("/") === place.join("/")}
            onChange={() => connectMeter(end)}
          />
          <span>{portPhrase(session.opened.design, end)}</span>
        </label>
      ))}
    </fieldset>
  );
}

function RequestField({ session }: CaseProps) {
  const { design } = session.opened;
  const asked = usePractice((s) => s.asked);
  const requests = useMemo(() => requestsOf(design), [design]);
  if (requests.length === 0) return null;
  return (
    <label className="faults-field">
      <span>Receivers ask for</span>
      <select
        className="field-input"
        value={askedKey(asked)}
        onChange={(event) =>
          usePractice.setState({
            asked: requests.find((r) => askedKey(r) === event.target.value) ?? null,
            isMeasured: false,
          })
        }
      >
        <option value="">what they ask for anyway</option>
        {requests.map((request) => (
          <option key={askedKey(request)} value={askedKey(request)}>
            {requestChoiceWords(request)}
          </option>
        ))}
      </select>
    </label>
  );
}

function Display({ session }: CaseProps) {
  const { place, quantity, asked, isMeasured } = usePractice();
  const { opened } = session;
  const shows = useMemo(
    () => (place && isMeasured ? meterShows(opened, place, quantity, asked) : null),
    [opened, place, quantity, asked, isMeasured],
  );
  if (!place) return <p className="meter-display quiet">Connect the meter to a wire first.</p>;
  if (isSkyPort(session, place))
    return <p className="meter-display">There is nothing to measure between dish and LNB.</p>;
  const onRoof = pointsOf(opened.design).some(
    ({ at, effort }) => effort === 2 && at.join("/") === place.join("/"),
  );
  return (
    <>
      {onRoof ? (
        <p className="caution-line">On the roof: only for whoever is trained and equipped to work there.</p>
      ) : null}
      {shows ? null : (
        <button type="button" className="button main" onClick={() => takeReading(session)}>
          <Gauge size={16} aria-hidden /> Measure
        </button>
      )}
      <div className="meter-display" role="status">
        {shows ? <MeterResult session={session} shows={shows} /> : <p className="quiet">– – –</p>}
      </div>
    </>
  );
}
