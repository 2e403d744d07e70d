import { GitCompareArrows, Pencil, Plus, Trash2 } from "lucide-react";
import { useMemo, useState } from "react";
import { activeName, freshVariantName, variantDesign, variantNames } from "../../../design/variants.ts";
import { useApp } from "../../../store/app.ts";
import { compareVariants } from "../../kit/asked/compared.ts";
import { IconButton } from "../../kit/IconButton.tsx";
import { NameForm } from "../../kit/NameForm.tsx";
import { siteWords } from "../../kit/told/siteWords.ts";
import { useSite } from "../../kit/told/useSite.ts";
import { copyAsVariant, deleteVariant, goToVariant, nameVariant } from "./actions.ts";
import styles from "./Variants.module.css";
import "../../kit/list.css";

/** The variants of the open design: copy, take up, rename, delete, compare. */
export function VariantList() {
  const design = useApp((s) => s.design);
  const [problem, setProblem] = useState<string | null>(null);
  const [deleted, setDeleted] = useState<string | null>(null);
  const names = variantNames(design);
  const active = activeName(design);
  const others = names.filter((name) => name !== active);
  return (
    <div className={styles.variants}>
      <p className="quiet">
        The same installation in several ways, in one document: as built, and the plans for it. All variants
        share title and limits.
      </p>
      <ul className="design-list">
        {names.map((name) => (
          <VariantRow
            key={name}
            name={name}
            onProblem={setProblem}
            onDelete={() => {
              const failed = deleteVariant(name);
              setProblem(failed);
              if (failed === null) setDeleted(name);
            }}
          />
        ))}
      </ul>
      <div role="status">
        {deleted !== null ? (
          <p className="undo-bar">
            Deleted “{deleted}”.
            <button
              type="button"
              className="button"
              onClick={() => {
                useApp.getState().undo();
                setDeleted(null);
              }}
            >
              Undo
            </button>
          </p>
        ) : null}
        {problem ? <p className="field-problem">{problem}</p> : null}
      </div>
      <NameForm
        key={names.join("|")}
        label="Copy the active variant as"
        start={freshVariantName(design)}
        button={
          <>
            <Plus size={16} aria-hidden /> Add
          </>
        }
        onName={(name) => {
          setDeleted(null);
          setProblem(copyAsVariant(name));
        }}
      />
      {others.length > 0 ? (
        <button type="button" className="button" onClick={() => compareVariants(others[0] ?? active, active)}>
          <GitCompareArrows size={16} aria-hidden /> Compare two…
        </button>
      ) : (
        <p className="quiet">
          Only one yet. Add a copy and change it. The first variant stays as it is, and you can compare both.
        </p>
      )}
    </div>
  );
}

type RowProps = {
  readonly name: string;
  readonly onProblem: (problem: string | null) => void;
  readonly onDelete: () => void;
};

function VariantRow({ name, onProblem, onDelete }: RowProps) {
  const design = useApp((s) => s.design);
  const [isRenaming, setRenaming] = useState(false);
  const own = useMemo(() => variantDesign(design, name), [design, name]);
  const site = useSite(own);
  const isActive = name === activeName(design);
  const isOnly = (design.variants ?? []).length === 0;
  if (isRenaming)
    return (
      <li className="design-row">
        <NameForm
          label={`New name of “${name}”`}
          isUnseen
          hasFocus
          start={name}
          button="Rename"
          onName={(next) => {
            onProblem(nameVariant(name, next));
            setRenaming(false);
          }}
          onGiveUp={() => setRenaming(false)}
        />
      </li>
    );
  return (
    <li className={isActive ? "design-row current" : "design-row"}>
      <button
        type="button"
        className="design-open"
        aria-current={isActive}
        onClick={() => onProblem(goToVariant(name))}
      >
        <strong>{name}</strong>
        <span className="quiet small">
          {isActive ? "active now · " : ""}
          {site ? siteWords(site) : "…"}
        </span>
      </button>
      <IconButton icon={Pencil} name={`Rename “${name}”`} onPress={() => setRenaming(true)} />
      <IconButton icon={Trash2} name={`Delete “${name}”`} disabled={isOnly} onPress={onDelete} />
    </li>
  );
}
