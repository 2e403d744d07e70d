import { Popover } from "radix-ui";
import { type ReactNode, useState } from "react";
import { CATALOGUE } from "../../parts/catalogue.ts";
import type { PartKind } from "../../parts/contract.ts";
import { FAMILY_NAMES } from "../../parts/contract.ts";
import { PickList } from "./PickList.tsx";

type Props = {
  readonly kind: PartKind;
  /** What the list is for. */
  readonly label: string;
  readonly button: ReactNode;
  readonly onPick: (kind: string) => void;
};

/** A button that offers every other kind; those of the part's own family come first in the list. */
export function KindPicker({ kind, label, button, onPick }: Props) {
  const [open, setOpen] = useState(false);
  const others = CATALOGUE.filter((k) => k.kind !== kind.kind);
  const kinds = [
    ...others.filter((k) => k.family === kind.family),
    ...others.filter((k) => k.family !== kind.family),
  ];
  return (
    <Popover.Root open={open} onOpenChange={setOpen}>
      <Popover.Trigger asChild>
        <button type="button" className="button">
          {button}
        </button>
      </Popover.Trigger>
      <Popover.Portal>
        <Popover.Content className="menu kind-picker" sideOffset={6} collisionPadding={8} aria-label={label}>
          <PickList
            label={label}
            none="No part matches."
            choices={kinds.map((k) => ({
              key: k.kind,
              words: `${k.name} · ${FAMILY_NAMES[k.family]}`,
              about: k.summary,
              also: k.keywords,
              value: k.kind,
            }))}
            onPick={(next) => {
              setOpen(false);
              onPick(next);
            }}
          />
        </Popover.Content>
      </Popover.Portal>
    </Popover.Root>
  );
}
