import type { Settings } from "../../../design/settings.ts";
import { type DeratingRule, deratingDb } from "../../../rf/intermod.ts";
import { decimal } from "../../kit/format.ts";

const COUNTS = [2, 4, 6, 10, 20, 40] as const;

const RULES: readonly { readonly rule: DeratingRule; readonly formula: string; readonly where: string }[] = [
  { rule: "beats", formula: "7.5 · log₁₀(n − 1)", where: "TV amplifiers, rated at 60 dB" },
  { rule: "power", formula: "10 · log₁₀(n / 2)", where: "satellite IF, rated at 35 dB" },
];

/** Both derating rules with what they take off, and where each is in use now. */
export function DeratingTable({ choice }: { readonly choice: Settings["derating"] }) {
  return (
    <div className="settings-scroll">
      <table className="settings-table">
        <thead>
          <tr>
            <th scope="col">
              Below the rated output <span className="quiet">dB</span>
            </th>
            <th scope="col">In use for</th>
            {COUNTS.map((n) => (
              <th key={n} scope="col" className="number">
                n = {n}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {RULES.map(({ rule, formula, where }) => (
            <tr key={rule}>
              <th scope="row">{formula}</th>
              <td>{choice === "usual" ? where : choice === rule ? "every amplifier" : "none"}</td>
              {COUNTS.map((carriers) => (
                <td key={carriers} className="number">
                  {decimal(deratingDb({ rule, carriers }))}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
