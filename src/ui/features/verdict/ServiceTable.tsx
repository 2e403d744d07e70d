import type { ServiceVerdict } from "../../../findings/finding.ts";
import { levelRangeWords } from "../../../sentences/figures.ts";
import { missingSentences } from "../../../sentences/verdict.ts";
import { serviceName } from "../../../signal/carrier.ts";
import { useApp } from "../../../store/app.ts";
import { LevelFigure } from "../../kit/asked/LevelFigure.tsx";
import type { Question } from "../../kit/asked/question.ts";
import { type VerdictFigure, verdictQuestion } from "../../kit/asked/verdictQuestion.ts";
import { decimal } from "../../kit/format.ts";
import { Table } from "../../kit/Table.tsx";

type Props = {
  readonly services: readonly ServiceVerdict[];
  /** Whose services these are: then each figure leads to how it came about. Absent on paper. */
  readonly part?: string;
};

/** What a receiver or an outlet gets of each service, and below it why not more. */
export function ServiceTable({ services, part }: Props) {
  const question: AskFigure | undefined =
    part === undefined
      ? undefined
      : (service, figure) => {
          const record = useApp.getState().evaluation.record(part);
          return record ? verdictQuestion(record, service.service, figure) : null;
        };
  // On paper those of all receivers line up, one below the other.
  const share = part === undefined ? 25 : undefined;
  return (
    <Table
      label="Services"
      isOnPaper={part === undefined}
      rows={services}
      keyOf={({ service }) => service}
      columns={[
        { head: "Service", share, cell: serviceName },
        {
          head: "Got",
          share,
          isNumber: true,
          isShort: ({ got, wanted }) => got < wanted,
          cell: ({ got, wanted }) => `${got} of ${wanted}`,
        },
        {
          head: "Level",
          share,
          isNumber: true,
          cell: (service) =>
            question ? (
              <LevelEnds service={service} question={question} />
            ) : (
              levelRangeWords(service.levelMin, service.levelMax)
            ),
        },
        {
          head: "Min C/N",
          share,
          isNumber: true,
          cell: (service) => <Quality service={service} question={question} />,
        },
      ]}
      linesBelow={(service) =>
        service.missing.map((_, n) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: what is missing has no identity but its place.
          <Missing key={n} service={service} n={n} />
        ))
      }
    />
  );
}

type AskFigure = (service: ServiceVerdict, figure: VerdictFigure) => Question | null;

/** One reason why a service is not all there; it follows a part that is renamed. */
function Missing({ service, n }: { readonly service: ServiceVerdict; readonly n: number }) {
  return useApp((s) => missingSentences(service, s.evaluation)[n]);
}

/** Lowest and highest level, each with its own way back; one figure where both read alike. */
function LevelEnds({
  service,
  question,
}: {
  readonly service: ServiceVerdict;
  readonly question: AskFigure;
}) {
  const { levelMin, levelMax } = service;
  const name = serviceName(service);
  if (levelMin === undefined || levelMax === undefined) return "–";
  const low = decimal(levelMin, 0);
  const high = decimal(levelMax, 0);
  if (low === high)
    return (
      <LevelFigure about={`Level of ${name}`} question={() => question(service, "levelMin")}>
        {low} dBµV
      </LevelFigure>
    );
  return (
    <>
      <LevelFigure about={`Lowest level of ${name}`} question={() => question(service, "levelMin")}>
        {low}
      </LevelFigure>
      –
      <LevelFigure about={`Highest level of ${name}`} question={() => question(service, "levelMax")}>
        {high} dBµV
      </LevelFigure>
    </>
  );
}

type QualityProps = { readonly service: ServiceVerdict; readonly question: AskFigure | undefined };

function Quality({ service, question }: QualityProps) {
  const { cnMin, sound } = service;
  const name = serviceName(service);
  if (cnMin === undefined) return "–";
  const words = `${decimal(cnMin)} dB`;
  // An FM station is heard, good or clean: what a digital one is not by degrees.
  const step = sound ? `, ${sound.step}` : "";
  if (!question) return `${words}${step}`;
  return (
    <>
      <LevelFigure about={`Min C/N of ${name}`} question={() => question(service, "cnMin")}>
        {words}
      </LevelFigure>
      {step}
    </>
  );
}
