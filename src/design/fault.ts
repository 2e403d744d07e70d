/** What is wrong with a file, a link or a value, as facts; `faultWords.ts` says them. */

/** Where something is wrong; what is absent is not known or does not matter. */
export type FaultPlace = {
  /** The variant that rests; absent: the one at work. */
  readonly variant?: NameOrNumber;
  readonly part?: NameOrNumber;
  /** Counted from 1. */
  readonly wire?: number;
  /** Row of a list inside the options or settings, with the label of the list; counted from 1. */
  readonly row?: { readonly list: string; readonly number: number };
};

/** A part by its label, else by its id, a variant by its name; else by the number in the list, counted from 1. */
export type NameOrNumber = { readonly name: string | null; readonly number: number };

/** What may stand in the place of a value. */
export type Allowed =
  | {
      readonly type: "number";
      readonly min: number | undefined;
      readonly max: number | undefined;
      readonly unit?: string;
      readonly isWhole: boolean;
    }
  | { readonly type: "text"; readonly most?: number }
  | { readonly type: "choice"; readonly labels: readonly string[] }
  | { readonly type: "list"; readonly most?: number }
  | { readonly type: "yes or no" | "id" | "name" | "values" | "place" | "port" };

/** A port as it is spoken of: "input “in 1” of “Combiner 1”". */
export type PortMark = {
  readonly part: NameOrNumber;
  readonly side: "in" | "out";
  readonly label: string;
  /** The part has no other port of this side. */
  readonly isOnly: boolean;
};

/** What is counted against a limit of the whole design. */
export type LimitedThing = "parts" | "wires" | "rows" | "variants";

export type SyntaxFault =
  | { readonly type: "empty" | "unclosed text" | "break in text" | "escape" }
  | { readonly type: "ends"; readonly awaited: string }
  | { readonly type: "instead"; readonly awaited: string; readonly found: string }
  | { readonly type: "too deep"; readonly most: number };

export type ValueFault = {
  readonly type: "value";
  readonly place: FaultPlace;
  /** The label of the field, or "the name". */
  readonly field: string;
  readonly found: unknown;
  readonly allowed: Allowed;
};

export type InputFault =
  | ValueFault
  | { readonly type: "syntax"; readonly line: number; readonly column: number; readonly what: SyntaxFault }
  | { readonly type: "too long"; readonly length: number; readonly most: number }
  | { readonly type: "too many values"; readonly most: number }
  | { readonly type: "no design" }
  | { readonly type: "no version"; readonly newest: number }
  | { readonly type: "newer"; readonly version: number; readonly newest: number }
  | { readonly type: "newer values"; readonly set: number; readonly newest: number }
  | { readonly type: "too many"; readonly what: LimitedThing; readonly count: number; readonly most: number }
  | { readonly type: "unknown kind"; readonly place: FaultPlace; readonly kind: string }
  | {
      readonly type: "same id";
      readonly place: FaultPlace;
      readonly id: string;
      readonly other: NameOrNumber;
    }
  | { readonly type: "same variant"; readonly name: string }
  | { readonly type: "no part"; readonly place: FaultPlace; readonly end: "from" | "to"; readonly id: string }
  | {
      readonly type: "no port";
      readonly place: FaultPlace;
      readonly part: NameOrNumber;
      readonly side: "in" | "out";
      readonly port: string;
      /** Labels of the ports of that side. */
      readonly known: readonly string[];
    }
  | { readonly type: "wrong side"; readonly place: FaultPlace; readonly port: PortMark }
  | { readonly type: "two wires"; readonly place: FaultPlace; readonly port: PortMark }
  | {
      readonly type: "wrong medium";
      readonly place: FaultPlace;
      readonly from: NameOrNumber;
      readonly to: NameOrNumber;
      readonly medium: "sky" | "coax";
    };
