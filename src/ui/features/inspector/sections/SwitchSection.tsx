import type { PartRecord } from "../../../../evaluate/evaluation.ts";
import { takesCircular } from "../../../../sentences/planes.ts";
import type { SwitchState } from "../../../../signal/control.ts";
import { useApp } from "../../../../store/app.ts";
import { settingWords } from "../../../canvas/bands.ts";
import { decimal } from "../../../kit/format.ts";
import { Table } from "../../../kit/Table.tsx";
import type { Column } from "../../../kit/tableShape.ts";
import styles from "./Sections.module.css";
import { decidesByVolts, type Speaker, speakersOf } from "./switches.ts";

/** For each switched output: who speaks to it, what arrives of that, and how it stands. */
export function SwitchSection({ record }: { readonly record: PartRecord }) {
  const switches = Object.values(record.switches);
  if (switches.length === 0) return null;
  return (
    <section aria-label="Commands">
      <h3>Commands</h3>
      {switches.map((at) => (
        <SwitchOf
          key={at.id}
          at={at}
          label={record.ports.find((p) => p.id === at.port)?.label ?? at.port}
          isByVolts={decidesByVolts(record, at.port)}
          isCircular={takesCircular(record)}
        />
      ))}
    </section>
  );
}

function SwitchOf({
  at,
  label,
  isByVolts,
  isCircular,
}: {
  readonly at: SwitchState;
  readonly label: string;
  readonly isByVolts: boolean;
  readonly isCircular: boolean;
}) {
  const evaluation = useApp((s) => s.evaluation);
  const speakers = speakersOf(evaluation, at);
  return (
    <div className={styles.switch}>
      <p className={at.contested ? "state bad" : "state"}>
        <strong>{label}</strong> {standWords(at, isCircular)}
        {isByVolts
          ? ` · ${isCircular ? "left-hand" : "horizontal"} above ${decimal(at.thresholdVolts)} V`
          : ""}
      </p>
      {speakers.length === 0 ? null : (
        <Table
          label="What arrives of each command"
          nameAt={null}
          groups={speakers.map((speaker, n) => ({
            key: speaker.key,
            head: <SpeakerName speaker={speaker} isWinner={n === 0} />,
            rows: [speaker],
            isAsleep: speaker.offer.dormant,
          }))}
          keyOf={({ key }) => key}
          isAsleep={({ offer }) => offer.dormant}
          columns={isCircular ? CIRCULAR_COLUMNS : LINEAR_COLUMNS}
        />
      )}
    </div>
  );
}

function standWords(at: SwitchState, isCircular: boolean): string {
  if (at.setting === null) return "is not set by any receiver";
  const stands =
    at.setting === "stack"
      ? "takes messages for user bands"
      : `is set to ${settingWords(at.setting, isCircular)}`;
  return at.contested ? `${stands}, contested: each sees what the first asks for` : stands;
}

type NameProps = { readonly speaker: Speaker; readonly isWinner: boolean };

function SpeakerName({ speaker, isWinner }: NameProps) {
  const { name, words, offer } = speaker;
  return (
    <>
      {name}
      <span className="quiet">
        {" "}
        {words}
        {offer.dormant ? " (inactive: a switch is in another position)" : isWinner ? " · decides" : ""}
      </span>
    </>
  );
}

const speakerColumns = (first: string, second: string): readonly Column<Speaker>[] => [
  { head: `V for ${first}`, isNumber: true, cell: ({ offer }) => decimal(offer.volts13) },
  {
    head: `V for ${second}`,
    isNumber: true,
    isShort: ({ tooLow }) => tooLow,
    cell: ({ offer, tooLow }) => `${decimal(offer.volts18)}${tooLow ? " too low" : ""}`,
  },
  {
    head: "Lost",
    isNumber: true,
    cell: ({ offer }) => `${decimal(offer.dropVolts)} V, ${decimal(offer.ohms)} Ω`,
  },
  {
    head: "22 kHz",
    isShort: ({ offer }) => !offer.toneArrives,
    cell: ({ offer }) => (offer.toneArrives ? "arrives" : "lost"),
  },
  {
    head: "Supplies",
    isShort: ({ load }) => load !== null && load.milliamps > load.limitMa,
    cell: ({ load }) => (load ? `${decimal(load.milliamps, 0)} of ${decimal(load.limitMa, 0)} mA` : "–"),
  },
];

const LINEAR_COLUMNS = speakerColumns("V", "H");
const CIRCULAR_COLUMNS = speakerColumns("R", "L");
