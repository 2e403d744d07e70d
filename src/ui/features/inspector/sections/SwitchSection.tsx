import type { PartRecord } from "../../../../evaluate/evaluation.ts";
import type { SwitchState } from "../../../../signal/control.ts";
import { useApp } from "../../../../store/app.ts";
import { settingWords } from "../../../canvas/bands.ts";
import { decimal } from "../../../kit/format.ts";
import { ScrollBox } from "../../../kit/ScrollBox.tsx";
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
    <div className="switch-of">
      <p className={at.contested ? "state bad" : "state"}>
        <strong>{label}</strong> {standWords(at)}
        {isByVolts ? ` · horizontal above ${decimal(at.thresholdVolts)} V` : ""}
      </p>
      {speakers.length === 0 ? null : (
        <ScrollBox className="figures-scroll" label="What arrives of each command">
          <table className="figures-table">
            <thead>
              <tr>
                <th scope="col">V for V</th>
                <th scope="col">V for H</th>
                <th scope="col">Lost</th>
                <th scope="col">22 kHz</th>
                <th scope="col">Supplies</th>
              </tr>
            </thead>
            {speakers.map((speaker, i) => (
              <SpeakerRows key={speaker.key} speaker={speaker} isWinner={i === 0} />
            ))}
          </table>
        </ScrollBox>
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

function SpeakerRows({ speaker, isWinner }: { readonly speaker: Speaker; readonly isWinner: boolean }) {
  const { offer, load } = speaker;
  const overloaded = load !== null && load.milliamps > load.limitMa;
  return (
    <tbody>
      <tr className={offer.dormant ? "speaker asleep" : "speaker"}>
        <th scope="rowgroup" colSpan={5}>
          {speaker.name}
          <span className="quiet">
            {" "}
            {speaker.words}
            {offer.dormant ? " (inactive: a switch is in another position)" : isWinner ? " · decides" : ""}
          </span>
        </th>
      </tr>
      <tr className={offer.dormant ? "asleep" : ""}>
        <td className="number">{decimal(offer.volts13)}</td>
        <td className={speaker.tooLow ? "number short-of" : "number"}>
          {decimal(offer.volts18)}
          {speaker.tooLow ? " too low" : ""}
        </td>
        <td className="number">
          {decimal(offer.dropVolts)} V, {decimal(offer.ohms)} Ω
        </td>
        <td>{offer.toneArrives ? "arrives" : <strong className="short-of">lost</strong>}</td>
        <td className={overloaded ? "number short-of" : "number"}>
          {load ? `${decimal(load.milliamps, 0)} of ${decimal(load.limitMa, 0)} mA` : "–"}
        </td>
      </tr>
    </tbody>
  );
}
