/** The dialogs that can be opened from menus, commands and notices. */
export type ListedDialog =
  | "designs"
  | "share"
  | "settings"
  | "help"
  | "rules"
  | "glossary"
  | "prices"
  | "variants"
  | "revisions"
  | "compare"
  | "balance"
  | "conditions"
  | "practice"
  | "licences"
  | "restore";
