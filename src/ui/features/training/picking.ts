/** Connecting the meter somewhere, and casting a suspicion, from wherever on the screen. */
import type { PartId, PortRef } from "../../../design/design.ts";
import { partById, portOf, wireAt } from "../../../design/lookup.ts";
import { faultsAt } from "../../../remedies/faults/list.ts";
import { askedKey } from "../../../remedies/faults/requestChoice.ts";
import { addMeasured } from "../../../remedies/training/progress.ts";
import { useTraining } from "../../../store/training.ts";
import { type PracticeSession, usePractice } from "../../../store/trainingSession.ts";

/** The meter is connected there; it shows nothing before it is asked to. */
export function connectMeter(place: PortRef | null): void {
  usePractice.setState({ place, isMeasured: false });
}

export function suspectPart(suspect: PartId): void {
  if (usePractice.getState().suspect !== suspect) usePractice.setState({ suspect, suspectedType: null });
}

/** Reads the meter, which counts once for each place, quantity and request. */
export function takeReading(session: PracticeSession): void {
  const { place, quantity, asked } = usePractice.getState();
  if (!place) return;
  usePractice.setState({ isMeasured: true });
  useTraining
    .getState()
    .update(session.key, (progress) =>
      addMeasured(progress, { part: place[0], port: place[1], quantity, asked: askedKey(asked) }),
    );
}

/** Both ends of the wire at a place, the upper one first; only the place itself where nothing is joined. */
export function endsAt({ opened }: PracticeSession, place: PortRef): readonly PortRef[] {
  const wire = wireAt(opened.design, place);
  return wire ? [wire.from, wire.to] : [place];
}

export function isSkyPort({ opened }: PracticeSession, [id, port]: PortRef): boolean {
  const part = partById(opened.design, id);
  return part !== undefined && portOf(part, port)?.medium === "sky";
}

/** What can be wrong at a part, as the design stands; the list gives nothing away. */
export function typesAt({ opened }: PracticeSession, part: PartId) {
  return [...new Set(faultsAt(opened.design, part).map((f) => f.type))];
}
