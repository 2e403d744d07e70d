import { Replace } from "lucide-react";
import { Popover } from "radix-ui";
import { useState } from "react";
import { replaceKind } from "../../design/edits/replace.ts";
import type { PartRecord } from "../../evaluate/evaluation.ts";
import { CATALOGUE } from "../../parts/catalogue.ts";
import { FAMILY_NAMES } from "../../parts/contract.ts";
import { useApp } from "../../store/app.ts";
import { PickList } from "../canvas/PickList.tsx";

/** Puts another kind in the part's place; its own family comes first in the list. */
export function ReplacePicker({ record }: { readonly record: PartRecord }) {
  const [open, setOpen] = useState(false);
  const { part, kind } = record;
  const others = CATALOGUE.filter((k) => k.kind !== kind.kind);
  const kinds = [
    ...others.filter((k) => k.family === kind.family),
    ...others.filter((k) => k.family !== kind.family),
  ];
  return (
    <Popover.Root open={open} onOpenChange={setOpen}>
      <Popover.Trigger asChild>
        <button type="button" className="button">
          <Replace size={16} aria-hidden /> Replace with…
        </button>
      </Popover.Trigger>
      <Popover.Portal>
        <Popover.Content
          className="menu kind-picker"
          sideOffset={6}
          collisionPadding={8}
          aria-label="Replace with"
        >
          <PickList
            label="Replace with"
            none="Nothing of that name."
            choices={kinds.map((k) => ({
              key: k.kind,
              words: `${k.name} · ${FAMILY_NAMES[k.family]}`,
              about: k.summary,
              also: k.keywords,
              value: k.kind,
            }))}
            onPick={(next) => {
              setOpen(false);
              const { design, change } = useApp.getState();
              change(replaceKind(design, part.id, next));
            }}
          />
        </Popover.Content>
      </Popover.Portal>
    </Popover.Root>
  );
}
