/** Usual runs of several parts: a cable with the outlet behind it, an outlet with what is plugged in there. */
import type { Attachment } from "../../design/edits/attach.ts";
import { CATALOGUE } from "../../parts/catalogue.ts";
import type { AnyOptions } from "../../parts/contract.ts";
import type { Job } from "../../parts/trade.ts";
import type { Carried } from "../carried.ts";
import { bestInput, type Made, misfit, socketsFedBy, suitsFeed } from "./inputs.ts";
import { made } from "./sizes.ts";

/** What may follow at once upon a part that is joined to a line which carries this; the shorter runs first. */
export function runsOf(first: Attachment, part: Made, carried: Carried): readonly Attachment[] {
  // A cable for one plane of four leads to a switch unit, and an empty line may lead anywhere.
  if (carried.services.size === 0 || carried.feed === "planes") return [];
  if (part.kind.delivery) {
    const plugged = pluggedIn(part, first.port, carried);
    return plugged.length > 0 ? [{ ...first, behind: plugged }] : [];
  }
  const output = part.kind.ports(part.options).find((p) => p.side === "out");
  if (part.kind.trade.soldBy !== "metre" || !output) return [];
  const outlet = bestOf("plate", output, carried);
  if (!outlet) return [];
  return [outlet.attachment, ...runsOf(outlet.attachment, outlet.part, carried)].map((attachment) => ({
    ...first,
    behind: [{ from: output.id, attachment }],
  }));
}

/** The usual receiver at each socket of an outlet for which the line brings something. */
function pluggedIn(outlet: Made, input: string, carried: Carried): Attachment["behind"] {
  return socketsFedBy(outlet, input).flatMap(({ port, services }) => {
    const output = outlet.kind.ports(outlet.options).find((p) => p.id === port);
    const here = services.filter((service) => carried.services.has(service));
    if (!output || here.length === 0) return [];
    const receiver = bestOf("receiver", output, { ...carried, services: new Set(here) });
    return receiver ? [{ from: port, attachment: receiver.attachment }] : [];
  });
}

/** The part of a job that suits a line best; of equals, that which stands first in the catalogue. */
function bestOf(job: Job, output: Parameters<typeof bestInput>[1], carried: Carried) {
  const options: AnyOptions = {};
  const candidates = CATALOGUE.filter((kind) => kind.trade.job === job && suitsFeed(kind, carried)).flatMap(
    (kind) => {
      const part = made(kind, options);
      const input = bestInput(part, output, carried);
      if (!input) return [];
      const attachment: Attachment = { kind: kind.kind, options, port: input.id, behind: [] };
      return [{ part, attachment, misfit: misfit(part, input, carried) }];
    },
  );
  return candidates.sort((a, b) => a.misfit - b.misfit)[0];
}
