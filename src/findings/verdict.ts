/** Receivers and outlets in one sentence each. */
import type { PartRecord } from "../evaluate/evaluation.ts";
import { capital } from "../sentences/explain/plainWords.ts";
import { type Clause, type Counted, countedAs, list, missingWords, share } from "../sentences/phrases.ts";
import { type Band, SILENCE } from "../signal/band.ts";
import { SERVICE_NAMES, type Service } from "../signal/carrier.ts";
import { cnDb, marginDb, usedUserBands } from "../signal/readout.ts";
import { plural } from "../words/plural.ts";
import type { ServiceVerdict, Verdict } from "./finding.ts";
import type { ReceptionResult } from "./reception.ts";

export function receiverVerdict(record: PartRecord, reception: ReceptionResult): Verdict {
  const part = record.part.id;
  const services = reception.services.map(
    (s): ServiceVerdict => ({
      name: SERVICE_NAMES[s.service],
      carriersWanted: s.wanted,
      carriersGot: s.got,
      ...(s.levelMin === undefined ? {} : { levelMin: s.levelMin }),
      ...(s.levelMax === undefined ? {} : { levelMax: s.levelMax }),
      ...(s.cnMin === undefined ? {} : { cnMin: s.cnMin }),
      reasons: s.missing.map((m) => plural(m.count, m.clause)),
    }),
  );
  const connected = record.ports.some((p) => p.side === "in" && record.joined[p.id]);
  if (!connected)
    return { part, role: "receiver", works: false, sentence: "Nothing is connected.", services };
  if (services.length === 0)
    return {
      part,
      role: "receiver",
      works: true,
      sentence: "Is switched off and asks for nothing.",
      services,
    };
  if (reception.services.every((s) => s.wanted === 0))
    return { part, role: "receiver", works: false, sentence: "There is no aerial or dish for it.", services };
  const works = reception.services.every((s) => s.got === s.wanted);
  const phrases = reception.services
    .filter((s) => s.wanted > 0)
    .map((s) => share(s.got, s.wanted, s.service));
  const worst = reception.services
    .flatMap(({ missing, wanted }) => missing.map((m) => ({ ...m, wanted })))
    .sort((a, b) => b.count - a.count)[0];
  const why = worst ? ` ${capital(missingWords(worst.count, worst.wanted, worst.clause))}.` : "";
  return { part, role: "receiver", works, sentence: `Gets ${list(phrases)}.${why}`, services };
}

/** An outlet is judged by what arrives at it: does it hand all of that on, on the socket meant for it? */
export function outletVerdict(record: PartRecord): Verdict | undefined {
  const delivery = record.kind.delivery?.(record.options);
  if (!delivery) return undefined;
  const part = record.part.id;
  const offered = [...new Set(delivery.sockets.flatMap((s) => s.services))];
  const tallies = offered
    .map((service) => tallyService(record, delivery.sockets, service))
    .filter((t) => t.arriving > 0);
  const services = tallies.map(
    (t): ServiceVerdict => ({
      name: SERVICE_NAMES[t.service],
      carriersWanted: t.arriving,
      carriersGot: t.got,
      ...(t.got > 0 ? { levelMin: t.levelMin, levelMax: t.levelMax, cnMin: t.cnMin } : {}),
      reasons: t.got < t.arriving ? [plural(t.arriving - t.got, UNUSABLE)] : [],
    }),
  );
  if (tallies.length === 0)
    return {
      part,
      role: "outlet",
      works: false,
      sentence: "Nothing arrives that its sockets could hand on.",
      services,
    };
  const works = tallies.every((t) => t.got === t.arriving);
  const sentence = `Hands on ${list(tallies.map((t) => share(t.got, t.arriving, t.counted)))}.`;
  return { part, role: "outlet", works, sentence, services };
}

const UNUSABLE: Clause = {
  one: (n) => `${n} does not come out usable`,
  other: (n) => `${n} do not come out usable`,
};

type Sockets = readonly { readonly port: string; readonly services: readonly Service[] }[];

function tallyService(record: PartRecord, sockets: Sockets, service: Service) {
  const arriving = new Set<string>();
  let counted: Counted = service;
  for (const spectrum of Object.values(record.inputs))
    for (const band of spectrum.bands) {
      // What an earlier filter removed as a whole was never meant for this outlet.
      if (band.origin.service !== service || !band.cut.includes(0)) continue;
      counted = countedAs(band);
      for (let i = 0; i < band.level.length; i++) if (isExpected(band, i)) arriving.add(carrierKey(band, i));
    }
  const got = new Set<string>();
  let levelMin = Number.POSITIVE_INFINITY;
  let levelMax = Number.NEGATIVE_INFINITY;
  let cnMin = Number.POSITIVE_INFINITY;
  for (const { band, i } of handedOn(record, sockets, service)) {
    const level = band.level[i] ?? 0;
    got.add(carrierKey(band, i));
    levelMin = Math.min(levelMin, level);
    levelMax = Math.max(levelMax, level);
    cnMin = Math.min(cnMin, cnDb(band, i));
  }
  return { service, counted, arriving: arriving.size, got: got.size, levelMin, levelMax, cnMin };
}

type HandedOn = { readonly port: string; readonly band: Band; readonly i: number };

/** Usable carriers of a service on the sockets meant for it. */
export function handedOn(record: PartRecord, sockets: Sockets, service: Service): readonly HandedOn[] {
  const found: HandedOn[] = [];
  for (const { port, services } of sockets) {
    if (!services.includes(service)) continue;
    for (const band of (record.outputs[port] ?? SILENCE).bands) {
      if (band.origin.service !== service) continue;
      for (let i = 0; i < band.level.length; i++)
        if (!band.cut[i] && marginDb(band, i) >= 0 && isExpected(band, i)) found.push({ port, band, i });
    }
  }
  return found;
}

function carrierKey(band: Band, i: number): string {
  return `${band.origin.key}#${band.grid.index[i]}`;
}

/** Of a stacked feed only the user bands that some receiver uses are missed when they are gone. */
function isExpected(band: Band, i: number): boolean {
  if (!band.stack) return true;
  const used = usedUserBands(band.stack);
  return used.size === 0 || used.has(band.stack.numbers[i] ?? 0);
}
