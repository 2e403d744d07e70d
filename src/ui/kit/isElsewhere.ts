/** In a field, the keys belong to the field; in a dialog or a menu, to that. */
export function isElsewhere(target: Element | null): boolean {
  return (
    target !== null &&
    target.closest(
      "input, textarea, select, [contenteditable], [role=dialog], [role=menu], [role=listbox]",
    ) !== null
  );
}
