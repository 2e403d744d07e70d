import { LoaderCircle, Square } from "lucide-react";
import { useEffect, useState } from "react";
import { profileOf } from "../../../findings/limits.ts";
import { serviceNameIn } from "../../../sentences/serviceWords.ts";
import { WANTED_SERVICES } from "../../../signal/carrier.ts";
import { useApp } from "../../../store/app.ts";
import { useBalance } from "../../../store/balance.ts";
import { readNumeral } from "../../kit/fields/numeral.ts";
import { counted } from "../../kit/format.ts";
import styles from "./Balance.module.css";
import { BalanceResult } from "./BalanceResult.tsx";
import { middleOf, servicesDelivered } from "./usual.ts";

type Service = (typeof WANTED_SERVICES)[number];

/** Chooses taps, attenuators, gains and slopes so that every outlet comes near to one level. */
export function BalanceForm({ onDone }: { readonly onDone: () => void }) {
  const design = useApp((s) => s.design);
  const evaluation = useApp((s) => s.preview?.document.evaluation ?? s.evaluation);
  const status = useBalance((s) => s.status);
  const document = useBalance((s) => s.document);
  const services = servicesDelivered(evaluation);
  const [wanted, setWanted] = useState<Service | null>(null);
  const service = services.find((s) => s === wanted) ?? services[0];
  const [target, setTarget] = useState<string | null>(null);
  const [spread, setSpread] = useState("3");
  // What goes on without anybody looking is of no use.
  useEffect(() => () => useBalance.getState().stop(), []);
  if (!service)
    return (
      <p className="quiet">No outlet and no receiver gets anything yet, so there is no level to balance.</p>
    );
  const usual = middleOf(profileOf(design), service);
  const targetDbuv = readNumeral(target ?? String(usual));
  const spreadDb = readNumeral(spread);
  const problem = problemOf(targetDbuv, spreadDb);
  const start = () => {
    if (targetDbuv !== null && spreadDb !== null && !problem)
      useBalance.getState().start({ service, targetDbuv, spreadDb });
  };
  return (
    <div className={styles.balance}>
      <p className="quiet">
        Tap values, attenuators, equalisers, gains and slopes are tried. The aim is one level at all outlets,
        inside the limits, with nothing made worse anywhere.
      </p>
      <form
        className={styles.aim}
        onSubmit={(event) => {
          event.preventDefault();
          start();
        }}
      >
        <label>
          <span className="small">Service</span>
          <select
            className="field-input"
            value={service}
            onChange={(event) => {
              setWanted(WANTED_SERVICES.find((s) => s === event.target.value) ?? null);
              setTarget(null);
            }}
          >
            {services.map((s) => (
              <option key={s} value={s}>
                {serviceNameIn(evaluation, s)}
              </option>
            ))}
          </select>
        </label>
        <NumberInput
          label="Level at every outlet, dBµV"
          value={target ?? String(usual)}
          isWrong={targetDbuv === null}
          onValue={setTarget}
        />
        <NumberInput
          label="Max spread, dB"
          value={spread}
          isWrong={spreadDb === null || spreadDb < 0}
          onValue={setSpread}
        />
        {status === "running" ? (
          <button type="button" className="button" onClick={() => useBalance.getState().stop()}>
            <Square size={14} aria-hidden /> Stop
          </button>
        ) : (
          <button type="submit" className="button main" disabled={problem !== null}>
            Balance
          </button>
        )}
      </form>
      {problem ? (
        <p role="alert" className="field-problem">
          {problem}
        </p>
      ) : null}
      <Standing />
      {document === design ? <BalanceResult onDone={onDone} /> : null}
    </div>
  );
}

function problemOf(targetDbuv: number | null, spreadDb: number | null): string | null {
  if (targetDbuv === null || targetDbuv < 20 || targetDbuv > 120)
    return "The level must be a number from 20 to 120 dBµV.";
  return spreadDb === null || spreadDb < 0 || spreadDb > 40
    ? "The spread must be a number from 0 to 40 dB."
    : null;
}

type InputProps = {
  readonly label: string;
  readonly value: string;
  readonly isWrong: boolean;
  readonly onValue: (text: string) => void;
};

function NumberInput({ label, value, isWrong, onValue }: InputProps) {
  return (
    <label>
      <span className="small">{label}</span>
      <input
        className="field-input number"
        inputMode="decimal"
        autoComplete="off"
        aria-invalid={isWrong}
        value={value}
        onChange={(event) => onValue(event.target.value)}
      />
    </label>
  );
}

function Standing() {
  const { status, best, problem } = useBalance();
  if (status === "idle") return null;
  const tried = counted(best?.tried ?? 0, "setting");
  return (
    <p role="status" className="cures-found">
      {status === "running" ? <LoaderCircle className="turning" size={15} aria-hidden /> : null}
      {status === "failed"
        ? `Balancing stopped: ${problem}`
        : status === "running"
          ? `Tried ${tried}`
          : `${tried} tried`}
    </p>
  );
}
