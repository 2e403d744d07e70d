import { X } from "lucide-react";
import { Dialog } from "radix-ui";
import type { ReactNode } from "react";
import { IconButton } from "./IconButton.tsx";
import { rememberOpener, returnToOpener } from "./opener.ts";

type Props = {
  readonly title: string;
  readonly open: boolean;
  readonly onClose: () => void;
  readonly children: ReactNode;
  /** Read to screen readers as the dialog opens. */
  readonly about?: string;
  /** For tables. */
  readonly isWide?: boolean;
};

/** A dialog with a title and a way out: Escape, the veil, or the button. */
export function Sheet({ title, open, onClose, children, about, isWide }: Props) {
  return (
    <Dialog.Root open={open} onOpenChange={(now) => !now && onClose()}>
      <Dialog.Portal>
        <Dialog.Overlay className="veil" />
        <Dialog.Content
          className={isWide ? "dialog wide-dialog" : "dialog"}
          onOpenAutoFocus={(event) => {
            // A list waits for typing; anywhere else the first button would only show its hint.
            event.preventDefault();
            rememberOpener();
            const dialog = event.currentTarget;
            if (!(dialog instanceof HTMLElement)) return;
            (dialog.querySelector<HTMLElement>("[role=combobox]") ?? dialog).focus();
          }}
          onEscapeKeyDown={(event) => {
            // The dialog hears the key before the field or form does, which only gives up what was being typed.
            if (event.target instanceof Element && event.target.closest("[data-takes-escape]"))
              event.preventDefault();
          }}
          onCloseAutoFocus={(event) => {
            event.preventDefault();
            returnToOpener();
          }}
          {...(about ? {} : { "aria-describedby": undefined })}
        >
          <div className="dialog-head">
            <Dialog.Title asChild>
              <h2>{title}</h2>
            </Dialog.Title>
            <IconButton icon={X} name="Close" onPress={onClose} />
          </div>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a text longer than the dialog is scrolled by the keys. */}
          <section className="dialog-body" tabIndex={0} aria-label={title}>
            {about ? <Dialog.Description className="quiet">{about}</Dialog.Description> : null}
            {children}
          </section>
        </Dialog.Content>
      </Dialog.Portal>
    </Dialog.Root>
  );
}
