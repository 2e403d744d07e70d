/** What a port offers, in words: "Cable, 16 m", "Cable, 16 m + Outlet, TV", and the same with receivers. */

import type { Attachment } from "../design/edits/attach.ts";
import { made } from "../findings/fitting/sizes.ts";
import { kindOf } from "../parts/catalogue.ts";
import { describedOptions, metresOf, optionsMeaning } from "../parts/meanings.ts";
import { numeralAsSet } from "../words/numbers.ts";
import { plural } from "../words/plural.ts";

/** A part or a run of parts, from the port on. */
export function attachmentWords(attachment: Attachment): string {
  return [partWords(attachment), ...attachment.behind.map((each) => attachmentWords(each.attachment))].join(
    " + ",
  );
}

/** The kind with what tells its sizes apart. */
function partWords({ kind: key, options }: Attachment): string {
  const kind = kindOf(key);
  if (!kind) return key;
  const all = made(kind, options).options;
  const metres = metresOf(kind, all);
  if (metres !== undefined) return `${kind.name}, ${numeralAsSet(metres)} m`;
  const [size] = optionsMeaning(kind, "outputs", "ways");
  if (size === undefined || !describedOptions(kind).get(size)?.sold) return kind.name;
  const count = Number(all[size]);
  const side = kind.ports(all).filter((port) => port.side === "out").length >= count ? "output" : "input";
  const noun =
    side === "output"
      ? plural(count, { one: (n) => `${n} output`, other: (n) => `${n} outputs` })
      : plural(count, { one: (n) => `${n} input`, other: (n) => `${n} inputs` });
  return `${kind.name}, ${noun}`;
}
