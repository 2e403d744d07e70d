import { ISOLATION_SOURCE, type NetworkRange, type Profile } from "../../../findings/limits.ts";
import { SERVICE_NAMES, WANTED_SERVICES } from "../../../signal/carrier.ts";
import { numeralAsSet } from "../../../words/numbers.ts";
import { modeWords } from "./modeWords.ts";

const RANGE_WORDS: Readonly<Record<NetworkRange, string>> = {
  terrestrial: "terrestrial range",
  satellite: "satellite IF",
};

/** The chosen limits in full, with their date and where they come from. */
export function ProfileTable({ profile }: { readonly profile: Profile }) {
  const { rows } = profile;
  return (
    <div className="profile">
      <p className="small">
        <strong>{profile.name}</strong> <span className="quiet">({profile.dated})</span>. Source:{" "}
        {profile.source}.
      </p>
      <div className="settings-scroll">
        <table className="settings-table">
          <thead>
            <tr>
              <th scope="col">Service</th>
              <th scope="col">Modulation</th>
              <th scope="col">
                Min <span className="quiet">dBµV</span>
              </th>
              <th scope="col">
                Max <span className="quiet">dBµV</span>
              </th>
              <th scope="col">
                Min C/N <span className="quiet">dB</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={`${row.service} ${row.mode}`}>
                <th scope="row">{SERVICE_NAMES[row.service]}</th>
                <td>{modeWords(row.mode, rows.filter((r) => r.service === row.service).length > 1)}</td>
                <td className="number">{numeralAsSet(row.minDbuv)}</td>
                <td className="number">{numeralAsSet(row.maxDbuv)}</td>
                <td className={row.cnDb === undefined ? "quiet" : "number"}>
                  {row.cnDb === undefined ? "not set" : numeralAsSet(row.cnDb)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <ul className="small">
        {furtherLimits(profile).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </div>
  );
}

function furtherLimits({ differenceDb, slopeDb, isolation }: Profile): readonly string[] {
  const ranges = ["terrestrial", "satellite"] as const;
  return [
    ...WANTED_SERVICES.flatMap((service) =>
      differenceDb[service] === undefined
        ? []
        : [
            `${SERVICE_NAMES[service]}: at most ${numeralAsSet(differenceDb[service])} dB between any two carriers.`,
          ],
    ),
    ...ranges.flatMap((range) =>
      slopeDb[range] === undefined
        ? []
        : [`Slope over the ${RANGE_WORDS[range]}: at most ${numeralAsSet(slopeDb[range])} dB.`],
    ),
    ...isolation.map(
      ({ fromMHz, toMHz, db }) =>
        `Isolation between flats, ${numeralAsSet(fromMHz)} to ${numeralAsSet(toMHz)} MHz: at least ${numeralAsSet(db)} dB (${ISOLATION_SOURCE}).`,
    ),
  ];
}
