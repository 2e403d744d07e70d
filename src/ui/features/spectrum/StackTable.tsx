import type { Band, Spectrum } from "../../../signal/band.ts";
import { plural } from "../../../words/plural.ts";
import { bandTitle, summarise } from "../../canvas/bands.ts";
import { megahertz } from "../../kit/format.ts";
import { Table } from "../../kit/Table.tsx";

/** User bands of a channel-stacked feed, and what each of them can hold. */
export function StackTable({ spectrum }: { readonly spectrum: Spectrum }) {
  const stacked = spectrum.bands.filter((band) => band.stack);
  return stacked.map((band, i) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: the bands of a wire keep their order while it is drawn.
    <StackOf key={i} band={band} />
  ));
}

function StackOf({ band }: { readonly band: Band }) {
  const { stack } = band;
  if (!stack) return null;
  const choice = stack.holds.map((held) => ({ name: bandTitle(held), live: summarise(held).live }));
  const total = choice.reduce((sum, c) => sum + c.live, 0);
  return (
    <details className="stack">
      <summary>{stackWords(stack.numbers.length, [...new Set(stack.standards)].join(", "), total)}</summary>
      <p className="small">
        To choose from: {choice.map((c) => `${c.name} (${c.live})`).join(", ") || "nothing arrives"}.
      </p>
      <Table
        label="User bands"
        columns={[
          { head: "User band", isNumber: true, cell: (number) => number },
          { head: "Centre", unit: "MHz", isNumber: true, cell: (_, i) => megahertz(band.grid.centre[i]) },
          { head: "Width", unit: "MHz", isNumber: true, cell: (_, i) => megahertz(band.grid.width[i]) },
        ]}
        rows={stack.numbers}
        keyOf={(number) => number}
      />
    </details>
  );
}

function stackWords(userBands: number, standard: string, transponders: number): string {
  const choice = plural(transponders, {
    zero: "with nothing to hold",
    one: "for the only transponder there",
    other: (n) => `for any one of ${n} transponders`,
  });
  return plural(userBands, {
    one: (n) => `${n} user band (${standard}), ${choice}`,
    other: (n) => `${n} user bands (${standard}), each ${choice}`,
  });
}
