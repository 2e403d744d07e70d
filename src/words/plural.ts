/** Texts that depend on a number: every form is a whole entry of its own, so that it can be put into another language. */
import { numeral } from "./numbers.ts";

/** A text, or one that takes the number as it is to be printed. */
export type Form = string | ((n: string) => string);

/** What to say of none, one and many. Without a form for none, the plural says it: "0 parts". */
export type Forms = {
  readonly zero?: Form;
  readonly one: Form;
  readonly other: Form;
};

const RULES = new Intl.PluralRules("en");

/**
 * The form that fits a number. Sentences and phrases are written out in each form; letters and words are never put
 * on or taken off: `plural(n, { one: (n) => `${n} wire is open.`, other: (n) => `${n} wires are open.` })`.
 * A number that is printed as 1 is one: 1.02 carriers are "1 carrier".
 */
export function plural(n: number, forms: Forms): string {
  const printed = Math.round(n * 10) / 10;
  const form =
    printed === 0 && forms.zero !== undefined
      ? forms.zero
      : RULES.select(printed) === "one"
        ? forms.one
        : forms.other;
  return typeof form === "string" ? form : form(numeral(printed));
}
