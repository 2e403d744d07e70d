import { ChevronDown, Layers } from "lucide-react";
import { DropdownMenu } from "radix-ui";
import { activeName, variantNames } from "../../../design/variants.ts";
import { useApp } from "../../../store/app.ts";
import { openComparison } from "../../kit/asked/compared.ts";
import { MenuChoice } from "../../kit/MenuChoice.tsx";
import { openDialog } from "../../kit/panes.ts";
import { goToVariant } from "./actions.ts";
import styles from "./Variants.module.css";

/** Beside the title, as soon as there is more than one: which variant is at work, and the way to the others. */
export function VariantMenu() {
  const design = useApp((s) => s.design);
  if (!design.variants) return null;
  const active = activeName(design);
  return (
    <DropdownMenu.Root>
      <DropdownMenu.Trigger asChild>
        <button type="button" className={`button ${styles.menuButton}`} aria-label={`Variant: ${active}`}>
          <Layers size={16} aria-hidden /> <span>{active}</span> <ChevronDown size={14} aria-hidden />
        </button>
      </DropdownMenu.Trigger>
      <DropdownMenu.Portal>
        <DropdownMenu.Content className="menu" align="start" sideOffset={4} collisionPadding={8}>
          <DropdownMenu.RadioGroup value={active} onValueChange={goToVariant}>
            {variantNames(design).map((name) => (
              <MenuChoice key={name} value={name}>
                {name}
              </MenuChoice>
            ))}
          </DropdownMenu.RadioGroup>
          <DropdownMenu.Separator className="menu-line" />
          <DropdownMenu.Item className="menu-item" onSelect={() => openDialog("variants")}>
            <span className="menu-check" /> Variants…
          </DropdownMenu.Item>
          <DropdownMenu.Item className="menu-item" onSelect={openComparison}>
            <span className="menu-check" /> Before and after…
          </DropdownMenu.Item>
        </DropdownMenu.Content>
      </DropdownMenu.Portal>
    </DropdownMenu.Root>
  );
}
