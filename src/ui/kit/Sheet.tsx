import { X } from "lucide-react";
import { Dialog } from "radix-ui";
import type { ReactNode } from "react";
import { IconButton } from "./IconButton.tsx";

type Props = {
  readonly title: string;
  readonly open: boolean;
  readonly onClose: () => void;
  readonly children: ReactNode;
  /** Read to screen readers as the dialog opens. */
  readonly about?: string;
};

/** A dialog with a title and a way out: Escape, the veil, or the button. */
export function Sheet({ title, open, onClose, children, about }: Props) {
  return (
    <Dialog.Root open={open} onOpenChange={(now) => !now && onClose()}>
      <Dialog.Portal>
        <Dialog.Overlay className="veil" />
        <Dialog.Content className="dialog" {...(about ? {} : { "aria-describedby": undefined })}>
          <div className="dialog-head">
            <Dialog.Title asChild>
              <h2>{title}</h2>
            </Dialog.Title>
            <IconButton icon={X} name="Close" onPress={onClose} />
          </div>
          <div className="dialog-body">
            {about ? <Dialog.Description className="quiet">{about}</Dialog.Description> : null}
            {children}
          </div>
        </Dialog.Content>
      </Dialog.Portal>
    </Dialog.Root>
  );
}
