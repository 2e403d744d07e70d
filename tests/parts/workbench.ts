/** A workbench for one part: puts bands on its inputs and speakers on its outputs, and runs it alone. */
import { isPowered, switchStates } from "../../src/evaluate/power.ts";
import { runTreatment } from "../../src/evaluate/signals.ts";
import type { AnyOptions, PartKind } from "../../src/parts/contract.ts";
import { type Band, SILENCE } from "../../src/signal/band.ts";
import type { Feed, Offer, Request } from "../../src/signal/control.ts";

export function kindNamed(kinds: readonly PartKind[], key: string): PartKind {
  const kind = kinds.find((k) => k.kind === key);
  if (!kind) throw new Error(`no kind ${key}`);
  return kind;
}

/** Options with everything else at its default. */
export function optionsOf(kind: PartKind, options: Record<string, unknown> = {}): AnyOptions {
  return kind.options.parse(options);
}

/** A receiver input that speaks to an output. */
export function speaker(request: Request): Feed {
  const offer: Offer = {
    part: "receiver",
    port: "sat",
    kind: "commands",
    volts13: 13,
    volts18: 18,
    volts: request.polarisation === "V" ? 13 : 18,
    ohms: 0,
    dropVolts: 0,
    limitMa: 400,
    toneArrives: true,
    request,
    dormant: false,
  };
  return [offer];
}

export type Bench = {
  readonly powered: boolean;
  /** All bands of a port. */
  readonly bands: (port: string) => readonly Band[];
  /** The bands that its switches let through now. */
  readonly selected: (port: string) => readonly Band[];
  readonly settings: Readonly<Record<string, string | null>>;
};

export function runPart(o: {
  kind: PartKind;
  options?: Record<string, unknown>;
  inputs?: Readonly<Record<string, readonly Band[]>>;
  speakers?: Readonly<Record<string, Feed>>;
}): Bench {
  const options = optionsOf(o.kind, o.options);
  const power = o.kind.power(options);
  const at = (port: string): Feed => o.speakers?.[port] ?? [];
  const powered = isPowered(power, at);
  const switches = switchStates("part", power, at, undefined);
  const results = runTreatment({
    part: "part",
    treatment: o.kind.signal(options, { id: "part", powered }),
    inputs: (port) => ({ bands: o.inputs?.[port] ?? SILENCE.bands }),
    switches,
    amplifiers: { derating: "usual", cascade: "in step" },
    before: undefined,
  });
  const bands = (port: string) => results[port]?.spectrum.bands ?? [];
  return {
    powered,
    bands,
    selected: (port) => bands(port).filter((b) => b.selected),
    settings: Object.fromEntries(Object.values(switches).map((s) => [s.port, s.setting])),
  };
}

/** Names of the live carriers of some bands. */
export function liveNames(bands: readonly Band[]): string[] {
  return bands.flatMap((band) =>
    Array.from(band.grid.index)
      .filter((_, i) => band.cut[i] === 0)
      .map((p) => band.grid.plan[p]?.name ?? ""),
  );
}
