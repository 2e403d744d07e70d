import type { Settings } from "../../../design/settings.ts";
import { type DeratingRule, deratingDb } from "../../../rf/intermod.ts";
import { numeral } from "../../../words/numbers.ts";
import { decimal } from "../../kit/format.ts";
import { Table } from "../../kit/Table.tsx";

const COUNTS = [2, 4, 6, 10, 20, 40] as const;

const RULES: readonly { readonly rule: DeratingRule; readonly formula: string; readonly where: string }[] = [
  { rule: "beats", formula: `${numeral(7.5)} · log₁₀(n − 1)`, where: "TV amplifiers, rated at 60 dB" },
  { rule: "channels", formula: "10 · log₁₀(n − 1)", where: "none" },
  { rule: "power", formula: "10 · log₁₀(n / 2)", where: "satellite IF, rated at 35 dB" },
];

/** All derating rules with what they take off, and where each is in use now. */
export function DeratingTable({ choice }: { readonly choice: Settings["derating"] }) {
  return (
    <Table
      label="Derating"
      columns={[
        { head: "Below the rated output", unit: "dB", cell: ({ formula }) => formula },
        {
          head: "In use for",
          cell: ({ rule, where }) =>
            choice === "usual" ? where : choice === rule ? "every amplifier" : "none",
        },
        ...COUNTS.map((carriers) => ({
          head: `n = ${carriers}`,
          isNumber: true,
          cell: ({ rule }: (typeof RULES)[number]) => decimal(deratingDb({ rule, carriers })),
        })),
      ]}
      rows={RULES}
      keyOf={({ rule }) => rule}
    />
  );
}
