import { Check } from "lucide-react";
import { DropdownMenu } from "radix-ui";
import type { ReactNode } from "react";

type Props = { readonly value: string; readonly onSelect?: () => void; readonly children: ReactNode };

/** One of several in a menu, of which one holds. */
export function MenuChoice({ value, onSelect, children }: Props) {
  return (
    <DropdownMenu.RadioItem className="menu-item" value={value} {...(onSelect ? { onSelect } : {})}>
      <span className="menu-check">
        <DropdownMenu.ItemIndicator>
          <Check size={16} aria-hidden />
        </DropdownMenu.ItemIndicator>
      </span>
      {children}
    </DropdownMenu.RadioItem>
  );
}
