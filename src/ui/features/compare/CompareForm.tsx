import { ArrowLeftRight } from "lucide-react";
import { useMemo } from "react";
import { variantNames } from "../../../design/variants.ts";
import { compareSites } from "../../../remedies/compare.ts";
import { useApp } from "../../../store/app.ts";
import { usePrices } from "../../../store/prices.ts";
import { type Side, sideDesign, sidesOf, useCompared } from "../../kit/asked/compared.ts";
import { openDialog } from "../../kit/panes.ts";
import { useSite } from "../../kit/told/useSite.ts";
import styles from "./Compare.module.css";
import { CompareResult } from "./CompareResult.tsx";

/** Two states of a design side by side: what is to be done, who gains and loses what, what it costs. */
export function CompareForm() {
  const document = useApp((s) => s.design);
  const { before, after } = sidesOf(document, useCompared());
  return (
    <div className={styles.compare}>
      <div className={styles.sides}>
        <SideChoice label="Before" which="before" side={before} />
        <button
          type="button"
          className="button icon"
          aria-label="Swap before and after"
          title="Swap before and after"
          onClick={() => useCompared.setState({ before: after, after: before })}
        >
          <ArrowLeftRight size={16} aria-hidden />
        </button>
        <SideChoice label="After" which="after" side={after} />
      </div>
      {variantNames(document).length < 2 && !before.design && !after.design ? (
        <OnlyOne />
      ) : (
        <Compared before={before} after={after} />
      )}
    </div>
  );
}

function Compared({ before, after }: { readonly before: Side; readonly after: Side }) {
  const document = useApp((s) => s.design);
  const prices = usePrices((s) => s.prices);
  const was = useSite(useDesignOf(before));
  const is = useSite(useDesignOf(after));
  const comparison = useMemo(() => was && is && compareSites(was, is, prices), [was, is, prices]);
  if (!was || !is || !comparison) return <p role="status">Calculating…</p>;
  return (
    <CompareResult
      key={document.title}
      compared={{ comparison, before: was, after: is, names: [before.name, after.name] }}
    />
  );
}

/** The same object while the document and the side stay. */
function useDesignOf({ name, design }: Side) {
  const document = useApp((s) => s.design);
  return useMemo(() => sideDesign(document, design ? { name, design } : { name }), [document, name, design]);
}

type ChoiceProps = { readonly label: string; readonly which: "before" | "after"; readonly side: Side };

function SideChoice({ label, which, side }: ChoiceProps) {
  const document = useApp((s) => s.design);
  return (
    <label>
      <span className="small quiet">{label}</span>
      <select
        className="field-input"
        value={side.design ? "" : side.name}
        onChange={(event) => {
          const name = event.target.value;
          if (name !== "") useCompared.setState({ [which]: { name } });
        }}
      >
        {side.design ? <option value="">{side.name}</option> : null}
        {variantNames(document).map((name) => (
          <option key={name} value={name}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}

function OnlyOne() {
  return (
    <p className="quiet">
      There is only one variant yet.{" "}
      <button type="button" className="link" onClick={() => openDialog("variants")}>
        Copy it under another name
      </button>{" "}
      and change the copy, or keep a cure as a variant.
    </p>
  );
}
