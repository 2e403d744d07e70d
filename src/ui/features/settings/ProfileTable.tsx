import { CN_SPARE_DB, type LimitRow, type NetworkRange, type Profile } from "../../../findings/limits.ts";
import { limitedName } from "../../../sentences/serviceWords.ts";
import { serviceName, televisionOf, WANTED_SERVICES } from "../../../signal/carrier.ts";
import { numeralAsSet } from "../../../words/numbers.ts";
import { Table } from "../../kit/Table.tsx";
import { modeWords } from "./modeWords.ts";
import styles from "./Settings.module.css";

const RANGE_WORDS: Readonly<Record<NetworkRange, string>> = {
  terrestrial: "terrestrial range",
  satellite: "satellite IF",
};

/** The chosen limits in full, with their date and where they come from. */
export function ProfileTable({ profile }: { readonly profile: Profile }) {
  const { rows } = profile;
  const hasMer = rows.some((row) => row.merDb !== undefined);
  const hasIm = rows.some((row) => row.imDb !== undefined);
  const hasSources = rows.some((row) => row.source !== undefined);
  return (
    <div className={styles.profile}>
      <p className="small">
        <strong>{profile.name}</strong> <span className="quiet">({profile.dated})</span>. Source:{" "}
        {profile.source}.
      </p>
      <Table
        label={`Limits of ${profile.name}`}
        rows={rows}
        keyOf={(row) => `${row.service} ${row.mode}`}
        columns={[
          {
            head: "Service",
            cell: (row) => serviceName({ ...row, ...televisionOf(row.service, [row.mode]) }),
          },
          {
            head: "Modulation",
            cell: (row) => modeWords(row.mode, rows.filter((r) => r.service === row.service).length > 1),
          },
          { head: "Min", unit: "dBµV", isNumber: true, cell: (row) => numeralAsSet(row.minDbuv) },
          { head: "Max", unit: "dBµV", isNumber: true, cell: (row) => numeralAsSet(row.maxDbuv) },
          {
            head: "Min C/N",
            unit: "dB",
            isNumber: true,
            cell: (row) => (row.cnDb === undefined ? "not set" : numeralAsSet(row.cnDb)),
          },
          ...(hasMer ? [MER_COLUMN] : []),
          ...(hasIm ? [IM_COLUMN] : []),
          ...(hasSources ? [REMARKS_COLUMN] : []),
        ]}
      />
      <ul className="small">
        {furtherLimits(profile).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </div>
  );
}

const MER_COLUMN = {
  head: "Min MER",
  unit: "dB",
  isNumber: true,
  cell: (row: LimitRow) => (row.merDb === undefined ? "not set" : numeralAsSet(row.merDb)),
};

/** Beside the table on a phone, where one scrolls to it: as wide as can be read. */
const REMARKS_COLUMN = {
  head: "Remarks",
  cell: ({ source }: LimitRow) => source && <span className={styles.remark}>{source}</span>,
};

/** Carrier to intermodulation products. */
const IM_COLUMN = {
  head: "Min C/IM",
  unit: "dB",
  isNumber: true,
  cell: (row: LimitRow) => (row.imDb === undefined ? "not set" : numeralAsSet(row.imDb)),
};

function furtherLimits(profile: Profile): readonly string[] {
  const { differenceDb, differenceSource, slopeDb, isolation, isolationSource, keepDb } = profile;
  const ranges = ["terrestrial", "satellite"] as const;
  return [
    reserveWords(profile),
    ...WANTED_SERVICES.flatMap((service) =>
      differenceDb[service] === undefined
        ? []
        : [
            `${limitedName(service, profile.rows)}: at most ${numeralAsSet(differenceDb[service])} dB between any two carriers (${differenceSource}).`,
          ],
    ),
    ...ranges.flatMap((range) =>
      slopeDb[range] === undefined
        ? []
        : [`Slope over the ${RANGE_WORDS[range]}: at most ${numeralAsSet(slopeDb[range])} dB.`],
    ),
    ...isolation.map(
      ({ fromMHz, toMHz, db }) =>
        `Isolation between flats, ${numeralAsSet(fromMHz)} to ${numeralAsSet(toMHz)} MHz: at least ${numeralAsSet(db)} dB.`,
    ),
    isolation.length > 0
      ? `Source of the isolation: ${isolationSource}.`
      : "Isolation between flats is not judged.",
    ...(keepDb > 0 ? [`From each of these ${numeralAsSet(keepDb)} dB are kept.`] : []),
  ];
}

/** Where no C/N is set, the modulation decides. */
function reserveWords({ reserve }: Profile): string {
  const db = numeralAsSet(reserve?.db ?? CN_SPARE_DB);
  const where = reserve?.isAlways ? "In any case" : "Where no C/N is set";
  return `${where}, C/N must be ${db} dB above what the modulation needs (${reserve?.source ?? "a choice of this tool"}).`;
}
