/** A searchable list: typing narrows it, arrow keys move, Enter takes, and digits where that is wished. */
import { matchSorter } from "match-sorter";
import { useId, useState } from "react";

export type PickOption<T> = {
  readonly key: string;
  readonly words: string;
  readonly about?: string;
  /** Further words to be found by. */
  readonly also?: readonly string[];
  readonly value: T;
};

type Props<T> = {
  readonly label: string;
  /** All there is to choose, or what there is for the words typed: a length, for instance. */
  readonly choices: readonly PickOption<T>[] | ((query: string) => readonly PickOption<T>[]);
  /** The first nine are taken by the digits 1 to 9 as long as nothing is typed. */
  readonly isNumbered?: boolean;
  /** Said when nothing is left to choose. */
  readonly none: string;
  readonly onPick: (value: T) => void;
};

/** What a thing is called comes before what else it is found by, however well that fits. */
const KEYS = [
  "words",
  { key: "also", maxRanking: matchSorter.rankings.CONTAINS },
  { key: "about", maxRanking: matchSorter.rankings.CONTAINS },
];

/** A longer list is narrowed by typing, not by scrolling. */
const SHOWN = 60;

/** Of equal matches, the likelier stands first in the list already. */
const inTheirOrder = (a: { readonly index: number }, b: { readonly index: number }) => a.index - b.index;

/** Each word typed narrows further, the best match of the first word first. */
function matching<T>(all: readonly PickOption<T>[], query: string): readonly PickOption<T>[] {
  const words = query.trim().split(/\s+/);
  return words.reduceRight(
    (left: readonly PickOption<T>[], word) => matchSorter(left, word, { keys: KEYS, baseSort: inTheirOrder }),
    all,
  );
}

/** On a touch screen the keyboard would cover the list: it comes when the field is touched. */
const isTouch = () => window.matchMedia?.("(pointer: coarse)").matches ?? false;

export function PickList<T>({ label, choices, none, onPick, isNumbered = false }: Props<T>) {
  const id = useId();
  const [query, setQuery] = useState("");
  const [at, setAt] = useState(0);
  const all = typeof choices === "function" ? choices(query) : choices;
  const found = (query.trim() === "" ? all : matching(all, query)).slice(0, SHOWN);
  const active = found[at];
  return (
    <>
      <input
        className="field-input"
        role="combobox"
        aria-expanded
        aria-controls={`${id}-list`}
        aria-activedescendant={active ? `${id}-${at}` : undefined}
        aria-label={label}
        placeholder="Search"
        // biome-ignore lint/a11y/noAutofocus: it follows upon a choice in the list before it, which had the focus.
        autoFocus={!isTouch()}
        value={query}
        onChange={(event) => {
          setQuery(event.target.value);
          setAt(0);
        }}
        onKeyDown={(event) => {
          const digit = isNumbered && query === "" ? found[Number(event.key) - 1] : undefined;
          if (event.key === "ArrowDown") setAt(Math.min(at + 1, found.length - 1));
          else if (event.key === "ArrowUp") setAt(Math.max(at - 1, 0));
          else if (event.key === "Enter" && active) onPick(active.value);
          else if (digit) onPick(digit.value);
          else return;
          event.preventDefault();
        }}
      />
      <div className="pick-list" role="listbox" id={`${id}-list`} aria-label={label}>
        {found.length === 0 && <p className="quiet">{none}</p>}
        {found.map((choice, i) => (
          // biome-ignore lint/a11y/useFocusableInteractive: the combobox keeps the focus and names the active option
          // biome-ignore lint/a11y/useKeyWithClickEvents: the keys are handled at the combobox
          <div
            key={choice.key}
            id={`${id}-${i}`}
            className="menu-item"
            role="option"
            aria-selected={i === at}
            data-highlighted={i === at ? "" : undefined}
            ref={i === at ? intoSight : undefined}
            onClick={() => onPick(choice.value)}
          >
            {isNumbered && (
              <span className="pick-digit" aria-hidden="true">
                {query === "" && i < 9 ? i + 1 : ""}
              </span>
            )}
            <span>
              {choice.words}
              {choice.about && <span className="lesson">{choice.about}</span>}
            </span>
          </div>
        ))}
      </div>
    </>
  );
}

function intoSight(element: HTMLElement | null): void {
  element?.scrollIntoView({ block: "nearest" });
}
