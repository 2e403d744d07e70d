import { ChevronDown, ChevronUp } from "lucide-react";
import { memo, useId, useState } from "react";
import { useShallow } from "zustand/react/shallow";
import type { ServiceVerdict, Verdict } from "../../../findings/finding.ts";
import { capital } from "../../../sentences/explain/plainWords.ts";
import { levelRangeWords } from "../../../sentences/figures.ts";
import { missingSentences, verdictSentence } from "../../../sentences/verdict.ts";
import { SERVICE_NAMES } from "../../../signal/carrier.ts";
import { useApp } from "../../../store/app.ts";
import { usePart } from "../../../store/hooks.ts";
import { selectFromPane } from "../../canvas/reveal.ts";
import { LevelFigure } from "../../kit/asked/LevelFigure.tsx";
import type { Question } from "../../kit/asked/question.ts";
import { type VerdictFigure, verdictQuestion } from "../../kit/asked/verdictQuestion.ts";
import { WalkButtons } from "../../kit/asked/WalkButtons.tsx";
import { decimal } from "../../kit/format.ts";
import { stateLook } from "../../kit/told/stateLook.ts";

/** A receiver or an outlet: works or not in one sentence, and on request what it gets of each service. */
export const VerdictRow = memo(function VerdictRow({ verdict }: { readonly verdict: Verdict }) {
  const id = useId();
  const [isOpen, setOpen] = useState(false);
  const label = usePart(verdict.part)?.label || verdict.part;
  const sentence = useApp((s) => verdictSentence(verdict, s.evaluation));
  const { Icon, word, tone } = stateLook(verdict);
  return (
    <li className="verdict-row">
      <div className="verdict-line">
        <button
          type="button"
          className="verdict-press"
          onClick={() => selectFromPane({ parts: [verdict.part] })}
        >
          <span className={`verdict-mark ${tone}`}>
            <Icon size={16} aria-hidden />
            <span className="unseen">{capital(word)}: </span>
          </span>
          <span className="verdict-words">
            <strong>{label}</strong>
            <span>{sentence}</span>
          </span>
        </button>
        {verdict.services.length > 0 ? (
          <button
            type="button"
            className="button icon bare"
            aria-label={`Services of ${label}`}
            aria-expanded={isOpen}
            aria-controls={id}
            onClick={() => setOpen(!isOpen)}
          >
            {isOpen ? <ChevronUp size={16} aria-hidden /> : <ChevronDown size={16} aria-hidden />}
          </button>
        ) : null}
      </div>
      <div id={id} className="verdict-details" hidden={!isOpen}>
        <ServiceTable services={verdict.services} part={verdict.part} />
        {isOpen ? <WalkButtons part={verdict.part} /> : null}
      </div>
    </li>
  );
});

type TableProps = {
  readonly services: readonly ServiceVerdict[];
  /** Whose services these are: then each figure leads to how it came about. Absent on paper. */
  readonly part?: string;
};

export function ServiceTable({ services, part }: TableProps) {
  return (
    <table className="service-table">
      <thead>
        <tr>
          <th scope="col">Service</th>
          <th scope="col">Got</th>
          <th scope="col">Level</th>
          <th scope="col">Min C/N</th>
        </tr>
      </thead>
      <tbody>
        {services.map((service) => (
          <ServiceRows
            key={service.service}
            service={service}
            question={
              part === undefined
                ? undefined
                : (figure) => {
                    const record = useApp.getState().evaluation.record(part);
                    return record ? verdictQuestion(record, service.service, figure) : null;
                  }
            }
          />
        ))}
      </tbody>
    </table>
  );
}

type RowProps = {
  readonly service: ServiceVerdict;
  readonly question: ((figure: VerdictFigure) => Question | null) | undefined;
};

function ServiceRows({ service, question }: RowProps) {
  const complete = service.got === service.wanted;
  const reasons = useApp(useShallow((s) => missingSentences(service, s.evaluation)));
  return (
    <>
      <tr>
        <th scope="row">{SERVICE_NAMES[service.service]}</th>
        <td className={complete ? "number" : "number short-of"}>
          {service.got} of {service.wanted}
        </td>
        <td className="number">
          {question ? (
            <LevelEnds service={service} question={question} />
          ) : (
            levelRangeWords(service.levelMin, service.levelMax)
          )}
        </td>
        <td className="number">
          <Quality service={service} question={question} />
        </td>
      </tr>
      {reasons.map((reason) => (
        <tr key={reason}>
          <td colSpan={4} className="service-reason">
            {reason}
          </td>
        </tr>
      ))}
    </>
  );
}

/** Lowest and highest level, each with its own way back; one figure where both read alike. */
function LevelEnds({
  service,
  question,
}: {
  readonly service: ServiceVerdict;
  readonly question: (figure: VerdictFigure) => Question | null;
}) {
  const { levelMin, levelMax } = service;
  const name = SERVICE_NAMES[service.service];
  if (levelMin === undefined || levelMax === undefined) return "–";
  const low = decimal(levelMin, 0);
  const high = decimal(levelMax, 0);
  if (low === high)
    return (
      <LevelFigure about={`Level of ${name}`} question={() => question("levelMin")}>
        {low} dBµV
      </LevelFigure>
    );
  return (
    <>
      <LevelFigure about={`Lowest level of ${name}`} question={() => question("levelMin")}>
        {low}
      </LevelFigure>
      –
      <LevelFigure about={`Highest level of ${name}`} question={() => question("levelMax")}>
        {high} dBµV
      </LevelFigure>
    </>
  );
}

function Quality({ service, question }: RowProps) {
  const { cnMin } = service;
  const name = SERVICE_NAMES[service.service];
  if (cnMin === undefined) return "–";
  const words = `${decimal(cnMin)} dB`;
  if (!question) return words;
  return (
    <LevelFigure about={`Min C/N of ${name}`} question={() => question("cnMin")}>
      {words}
    </LevelFigure>
  );
}
