import { useApp } from "../../../store/app.ts";
import { useFaultsView } from "../../kit/asked/whatFails.ts";
import styles from "./Faults.module.css";
import { Finder } from "./Finder.tsx";
import { WhatIf } from "./WhatIf.tsx";

const MODES = [
  { key: "find", name: "Find the fault" },
  { key: "what-if", name: "What if it fails?" },
] as const;

/** Faults forwards and backwards: what one would do, and which one would explain what is seen. */
export function FaultsPane() {
  const mode = useFaultsView((s) => s.mode);
  const isEmpty = useApp((s) => s.design.parts.length === 0);
  if (isEmpty)
    return (
      <div className="empty">
        <h3>No part yet that could fail</h3>
        <p>Single faults in what you draw can be tried out and looked for here.</p>
      </div>
    );
  return (
    <div className={styles.faults}>
      <h2 className="unseen">Faults</h2>
      <fieldset className="segments">
        <legend className="unseen">What to look into</legend>
        {MODES.map(({ key, name }) => (
          <label key={key} className="segment">
            <input
              className="unseen"
              type="radio"
              name="faults-mode"
              checked={mode === key}
              onChange={() => useFaultsView.setState({ mode: key })}
            />
            <span>{name}</span>
          </label>
        ))}
      </fieldset>
      {mode === "find" ? <Finder /> : <WhatIf />}
    </div>
  );
}
