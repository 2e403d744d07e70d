import type { PartId } from "../../design/design.ts";
import type { SwitchState } from "../../signal/control.ts";
import { culpritFirst, type RuleOf, wireIdsAt } from "../rule.ts";
import { sharedLine } from "../walk/sharedLine.ts";

export type SwitchedOutputSharedFacts = {
  /** Receivers on it, in the order of their legs. */
  readonly receivers: readonly PartId[];
  /** How many of their inputs speak. */
  readonly inputs: number;
  /** Part that brings them together; absent where it is not known. */
  readonly joins?: PartId;
  /** How it stands now; null where nobody feeds it. */
  readonly setting: string | null;
};

const speakersAt = ({ offers }: SwitchState) => offers.filter((o) => !o.dormant && o.kind === "commands");

/** Two receivers on one switched output. */
export const switchedOutputShared: RuleOf<"switched-output-shared"> = {
  id: "switched-output-shared",
  check: ({ record }) =>
    Object.values(record.switches)
      .filter((state) => state.contested)
      // Who is in single-cable mode only sends messages: that an output heeds none is another matter.
      .filter((state) => speakersAt(state).some((o) => !o.request?.userBands))
      .map((state) => {
        const speaking = speakersAt(state);
        const receivers = [...new Set(speaking.map((o) => o.part))];
        const part = record.part.id;
        return {
          severity: "error",
          at: { part, port: state.port },
          parts: culpritFirst(part, receivers),
          wires: wireIdsAt(record, state.port),
          value: receivers.length,
          limit: 1,
          unit: "receivers",
          facts: { receivers, inputs: speaking.length, setting: state.setting },
        };
      }),
  blame: (draft, evaluation) => {
    const { part, port = "" } = draft.at;
    const { joins, speakers } = sharedLine(evaluation, { part, port });
    const known = new Set(draft.facts.receivers);
    const receivers = [...new Set(speakers.map((s) => s.part))].filter((id) => known.has(id));
    const all = receivers.length === known.size ? receivers : draft.facts.receivers;
    return {
      ...draft,
      parts: culpritFirst(joins ?? part, [...all, part]),
      facts: { ...draft.facts, receivers: all, ...(joins === undefined ? {} : { joins }) },
    };
  },
};
