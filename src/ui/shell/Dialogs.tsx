import type { ListedDialog } from "../kit/dialogs.ts";
import { openDialog, usePanes } from "../kit/panes.ts";
import { Sheet } from "../kit/Sheet.tsx";
import { useAfterwards } from "./later.ts";

type Listed = {
  readonly title: string;
  /** For tables. */
  readonly isWide?: boolean;
};

/** Every dialog that menus, commands and notices open. What stands in each is listed in `afterwards.ts`. */
const DIALOGS: Readonly<Record<ListedDialog, Listed>> = {
  designs: { title: "Designs" },
  restore: { title: "Restore from a download" },
  share: { title: "Share this design" },
  settings: { title: "Limits, conditions, derating", isWide: true },
  prices: { title: "Prices and times" },
  variants: { title: "Variants" },
  revisions: { title: "Revisions" },
  compare: { title: "Before and after", isWide: true },
  balance: { title: "Balance outlets", isWide: true },
  conditions: { title: "Conditions", isWide: true },
  practice: { title: "Practice", isWide: true },
  help: { title: "Help" },
  rules: { title: "Rule book", isWide: true },
  glossary: { title: "Glossary" },
  licences: { title: "Licences of others" },
};

// The names of the table are those of its type.
const IDS = Object.keys(DIALOGS) as ListedDialog[];

const close = () => openDialog(null);

/**
 * The dialog that is open. All stand ready, closed, so that each closes in its own way before the next opens. One that
 * is asked for before its words are loaded opens with them: so the focus goes where it belongs.
 */
export function Dialogs() {
  const open = usePanes((s) => s.dialog);
  const bodies = useAfterwards({ isWanted: open !== null })?.DIALOG_BODIES;
  return IDS.map((id) => {
    const { title, isWide = false } = DIALOGS[id];
    const Body = bodies?.[id];
    return (
      <Sheet key={id} title={title} open={open === id && Body !== undefined} onClose={close} isWide={isWide}>
        {Body ? <Body onDone={close} /> : null}
      </Sheet>
    );
  });
}
