import type { PlaceLevel } from "../../../remedies/balance/aim.ts";
import type { Balance } from "../../../remedies/balance/balance.ts";
import { useApp } from "../../../store/app.ts";
import { decimal, levelRangeWords } from "../../kit/format.ts";
import { ScrollBox } from "../../kit/ScrollBox.tsx";

/** Level at every outlet before and after, with the distance from the nearer limit. */
export function LevelTable({ balance }: { readonly balance: Balance }) {
  const { before, after } = balance;
  const record = useApp((s) => s.evaluation.record);
  if (before.length === 0) return null;
  return (
    <section>
      <h3>
        Outlets <span className="quiet">· {decimal(apart(before))} dB apart before, </span>
        {decimal(apart(after))} dB after
      </h3>
      <ScrollBox className="compare-scroll" label="Levels of the outlets">
        <table className="balance-table">
          <thead>
            <tr>
              <th scope="col">Outlet</th>
              <th scope="col">Before</th>
              <th scope="col">After</th>
              <th scope="col">Margin after</th>
            </tr>
          </thead>
          <tbody>
            {after.map((level) => {
              const was = before.find((b) => b.part === level.part && b.port === level.port);
              const isOutside = level.marginDb < 0;
              return (
                <tr key={`${level.part} ${level.port}`}>
                  <th scope="row">{record(level.part)?.part.label ?? level.part}</th>
                  <td className="number">{was ? levelRangeWords(was.minDbuv, was.maxDbuv) : "–"}</td>
                  <td className="number">{levelRangeWords(level.minDbuv, level.maxDbuv)}</td>
                  <td className={isOutside ? "number short-of" : "number"}>
                    {decimal(level.marginDb)} dB{isOutside ? ", outside the limits" : ""}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </ScrollBox>
    </section>
  );
}

function apart(levels: readonly PlaceLevel[]): number {
  const means = levels.map((l) => l.meanDbuv);
  return means.length === 0 ? 0 : Math.max(...means) - Math.min(...means);
}
