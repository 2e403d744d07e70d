/** Words for people who never saw a meter: what a part is, how many, of what. */
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import { televisionIn } from "../../findings/television.ts";
import { type Service, type Television, WANTED_SERVICES } from "../../signal/carrier.ts";
import { list, partName } from "../phrases.ts";
import type { ToldFinding } from "../ruleWords.ts";

/** A part in everyday words: sockets and receivers by their label, everything else by what it does. */
export function plainName({ evaluation }: Pick<ToldFinding, "evaluation">, id: string | undefined): string {
  const record = evaluation.record(id ?? "");
  if (!record) return "a part of the system";
  const { kind, options, ports } = record;
  const fromSky = ports.some((p) => p.medium === "sky");
  switch (kind.family) {
    case "use":
    case "deliver":
      return partName(record.part.id);
    case "receive":
      if (fromSky) return "the dish";
      if (kind.trade.job === "signal source") return "the box that feeds the signal in";
      return sendsOnlyUnwanted(record) ? "a transmitter nearby" : "the aerial";
    case "convert":
      return fromSky ? "the unit on the dish arm" : "the switching unit";
    case "join":
      return "the box that combines or splits the cables";
    case "lift":
      if (amplifies(record)) return "the amplifier";
      return kind.power(options).supplies ? "the power supply" : "a small part in the line";
    case "run":
      return "a cable";
  }
}

function amplifies({ part, kind, options }: PartRecord): boolean {
  const { paths = [] } = kind.signal(options, { id: part.id, powered: true });
  return paths.some((path) => path.noiseFigureDb !== undefined);
}

/** A phone mast or a cordless phone: drawn because it disturbs. */
function sendsOnlyUnwanted({ outputs }: PartRecord): boolean {
  const bands = Object.values(outputs).flatMap((spectrum) => spectrum.bands);
  return bands.length > 0 && bands.every((b) => !WANTED_SERVICES.some((s) => s === b.origin.service));
}

/** Several parts in everyday words, each named once. */
export function plainNames(facts: Pick<ToldFinding, "evaluation">, ids: readonly string[]): string {
  return list([...new Set(ids.map((id) => plainName(facts, id)))]);
}

const PROGRAMMES: Readonly<Record<Service, string>> = {
  tv: "the television channels from the aerial",
  dab: "the digital radio stations",
  fm: "the FM stations",
  satellite: "the satellite channels",
  distant: "the signals of a distant transmitter",
  mobile: "the phone signals",
  cordless: "the cordless phone signals",
};

/** What comes of a service, and how television comes. */
type Sent = { readonly service: Service | undefined; readonly television?: Television };

/** Of a service in a design: television comes by cable in some. */
export function programmes(service: Service | undefined, evaluation: Evaluation): string {
  return programmesOf({ service, ...televisionIn(evaluation) });
}

function programmesOf({ service, television }: Sent): string {
  if (service === "tv") return TELEVISION[television ?? "by air"];
  return service ? PROGRAMMES[service] : "the channels";
}

const TELEVISION: Readonly<Record<Television | "by air", string>> = {
  "by air": PROGRAMMES.tv,
  "by cable": "the television channels from the cable network",
  "by air and cable": "the television channels",
};

/** Up to which share each word holds; in between the nearest. */
const SHARES: readonly (readonly [upTo: number, words: string])[] = [
  [0, "none"],
  [0.15, "only a few"],
  [0.29, "about a quarter"],
  [0.42, "about a third"],
  [0.58, "about half"],
  [0.7, "about two thirds"],
  [0.85, "about three quarters"],
  [0.9999, "nearly all"],
];

/** "about a third of the satellite channels". */
export function roughly(n: number, of: number, sent: Sent): string {
  const share = of > 0 ? n / of : 0;
  const words = SHARES.find(([upTo]) => share <= upTo)?.[1] ?? "all";
  return `${words} of ${programmesOf(sent)}`;
}

/** A capital letter at the start of a sentence; a label in its marks stays as the user wrote it. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** The same words in the middle of a sentence; abbreviations stay: "DAB aerial". */
export function uncapital(text: string): string {
  return /^\p{Lu}\p{Lu}/u.test(text) ? text : text.charAt(0).toLowerCase() + text.slice(1);
}
