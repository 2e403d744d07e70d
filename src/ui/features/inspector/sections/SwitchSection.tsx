import type { PartRecord } from "../../../../evaluate/evaluation.ts";
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
        />
      ))}
    </section>
  );
}

function SwitchOf({
  at,
  label,
  isByVolts,
}: {
  readonly at: SwitchState;
  readonly label: string;
  readonly isByVolts: boolean;
}) {
  const evaluation = useApp((s) => s.evaluation);
  const speakers = speakersOf(evaluation, at);
  return (
    <div className={styles.switch}>
      <p className={at.contested ? "state bad" : "state"}>
        <strong>{label}</strong> {standWords(at)}
        {isByVolts ? ` · horizontal above ${decimal(at.thresholdVolts)} V` : ""}
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
          columns={SPEAKER_COLUMNS}
        />
      )}
    </div>
  );
}

function standWords(at: SwitchState): string {
  if (at.setting === null) return "is not set by any receiver";
  const stands =
    at.setting === "stack" ? "takes messages for user bands" : `is set to ${settingWords(at.setting)}`;
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

const SPEAKER_COLUMNS: readonly Column<Speaker>[] = [
  { head: "V for V", isNumber: true, cell: ({ offer }) => decimal(offer.volts13) },
  {
    head: "V for H",
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
