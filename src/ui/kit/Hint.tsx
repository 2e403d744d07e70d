import { Tooltip } from "radix-ui";
import type { ReactNode } from "react";

/** A word of explanation on hover and on keyboard focus; the child carries its own accessible name. */
export function Hint({ text, children }: { readonly text: string; readonly children: ReactNode }) {
  return (
    <Tooltip.Root delayDuration={400}>
      <Tooltip.Trigger
        asChild
        onFocus={(event) => {
          // A focus that the page gave back after a press needs no explanation.
          if (!event.currentTarget.matches(":focus-visible")) event.preventDefault();
        }}
      >
        {children}
      </Tooltip.Trigger>
      <Tooltip.Portal>
        <Tooltip.Content className="hint" sideOffset={6} collisionPadding={8}>
          {text}
        </Tooltip.Content>
      </Tooltip.Portal>
    </Tooltip.Root>
  );
}
