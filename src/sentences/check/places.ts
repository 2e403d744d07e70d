/** What arrives place by place: flats, their outlets, the sockets of each and the receivers behind them. */
import type { PartId } from "../../design/design.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import { waysOf } from "../../findings/causes/ways.ts";
import type { ServiceVerdict, Verdict } from "../../findings/finding.ts";
import { flatOf } from "../../findings/isolation.ts";
import { type Service, serviceName } from "../../signal/carrier.ts";
import { numeral } from "../../words/numbers.ts";
import { levelRangeWords } from "../figures.ts";
import { namesOf, plainLabelOf } from "../phrases.ts";
import { stateName, verdictSentence } from "../verdict.ts";

const STEP = "  ";

/** Outlets in the order of the drawing, those of a flat together; then the receivers that are behind none. */
export function placeLines(evaluation: Evaluation, verdicts: readonly Verdict[]): readonly string[] {
  const outlets = verdicts.filter((v) => v.role === "outlet");
  const behind = receiversBehind(evaluation, verdicts);
  const flats = grouped(outlets, ({ part }) => flatOf(evaluation.record(part)));
  return [
    ...[...flats].flatMap(([flat, own]) => {
      const lines = own.flatMap((outlet) => outletLines(evaluation, outlet, behind));
      return flat === "" ? lines : [`Flat “${inOneLine(flat)}”`, ...indented(lines)];
    }),
    ...(behind.get(NO_OUTLET) ?? []).flatMap((v) => verdictLines(evaluation, v)),
  ];
}

const NO_OUTLET = "";

/** By part and port of the socket that they are connected to. */
function receiversBehind(
  evaluation: Evaluation,
  verdicts: readonly Verdict[],
): ReadonlyMap<string, readonly Verdict[]> {
  const ways = waysOf(evaluation);
  const isOutlet = new Set(verdicts.filter((v) => v.role === "outlet").map((v) => v.part));
  return grouped(
    verdicts.filter((v) => v.role === "receiver"),
    ({ part }) => {
      const socket = ways.signalTo(part).find((passed) => isOutlet.has(passed.part));
      return socket ? keyOf(socket.part, socket.port) : NO_OUTLET;
    },
  );
}

function keyOf(part: PartId, port: string): string {
  return `${part}/${port}`;
}

function outletLines(
  evaluation: Evaluation,
  outlet: Verdict,
  behind: ReadonlyMap<string, readonly Verdict[]>,
): readonly string[] {
  const record = evaluation.record(outlet.part);
  const sockets = socketsOf(record).map(({ port, label, services }) => {
    return [
      `Socket ${label}`,
      ...indented([
        ...outlet.services.filter((s) => isWanted(s) && services.includes(s.service)).map(serviceWords),
        ...(behind.get(keyOf(outlet.part, port)) ?? []).flatMap((v) => verdictLines(evaluation, v)),
      ]),
    ];
  });
  // What is connected to the line that goes on is behind none of the sockets.
  const known = new Set(socketsOf(record).map(({ port }) => keyOf(outlet.part, port)));
  const others = [...behind].filter(([key]) => key.startsWith(keyOf(outlet.part, "")) && !known.has(key));
  return [
    `Outlet ${headLine(evaluation, outlet)}`,
    ...indented([
      ...sockets.flat(),
      ...others.flatMap(([, own]) => own.flatMap((v) => verdictLines(evaluation, v))),
    ]),
  ];
}

function socketsOf(record: PartRecord | undefined): readonly {
  readonly port: string;
  readonly label: string;
  readonly services: readonly Service[];
}[] {
  const sockets = record?.kind.delivery?.(record.options).sockets ?? [];
  return sockets.map(({ port, services }) => ({
    port,
    label: record?.ports.find((p) => p.id === port)?.label ?? port,
    services,
  }));
}

/** A receiver, and beneath it each service that it is there for. */
function verdictLines(evaluation: Evaluation, verdict: Verdict): readonly string[] {
  return [headLine(evaluation, verdict), ...indented(verdict.services.filter(isWanted).map(serviceWords))];
}

/** “Living room”: fails. Delivers 1 of 6 TV channels. */
function headLine(evaluation: Evaluation, verdict: Verdict): string {
  const name = inOneLine(plainLabelOf(evaluation, verdict.part));
  const state = verdict.state === "fails" ? FAILS : stateName(verdict);
  return `“${name}”: ${state}. ${verdictSentence(verdict, evaluation)}`;
}

/** Whoever reads the words alone comes to the same as whoever reads the exit code. */
const FAILS = stateName({ state: "fails" });

/** "Terrestrial TV: 5 of 6, 54–61 dBµV, C/N 31.2 dB": levels of what is got, and the lowest C/N among it. */
function serviceWords(verdict: ServiceVerdict): string {
  const { got, wanted, counted, levelMin, levelMax, cnMin, sound } = verdict;
  const what = counted === undefined ? "" : ` ${namesOf(counted)}`;
  const figures = [
    `${numeral(got)} of ${numeral(wanted)}${what}`,
    ...(levelMin === undefined ? [] : [levelRangeWords(levelMin, levelMax)]),
    ...(cnMin === undefined || !Number.isFinite(cnMin) ? [] : [`C/N ${numeral(cnMin)} dB`]),
    ...(sound ? [sound.step] : []),
  ];
  return `${serviceName(verdict)}: ${figures.join(", ")}`;
}

function isWanted({ wanted }: ServiceVerdict): boolean {
  return wanted > 0;
}

function grouped<T>(items: readonly T[], keyOfItem: (item: T) => string): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const item of items) groups.set(keyOfItem(item), [...(groups.get(keyOfItem(item)) ?? []), item]);
  return groups;
}

/** A name that somebody else wrote breaks no line. */
function inOneLine(name: string): string {
  return name.replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, " ");
}

function indented(lines: readonly string[]): readonly string[] {
  return lines.map((line) => `${STEP}${line}`);
}
