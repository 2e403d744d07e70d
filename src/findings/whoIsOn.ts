/** Who is on: the supply of a part in every combination of receivers that are on, the others in standby. */
import type { Design, Part, PartId } from "../design/design.ts";
import { islandDesign, supplyAlone } from "../evaluate/supply/alone.ts";
import { kindOf } from "../parts/catalogue.ts";
import { optionMeaning } from "../parts/meanings.ts";

export type WhoIsOn = {
  /** Receivers that could feed the part, in the order of the design. */
  readonly receivers: readonly PartId[];
  /** From nobody to everybody: 2 to the number of receivers. */
  readonly states: readonly OnState[];
};

/** One combination. */
export type OnState = {
  readonly on: readonly PartId[];
  /** Most volts at any port of the part that it lives on, and what it draws [V, mA]. */
  readonly volts: number;
  readonly milliamps: number;
  readonly works: boolean;
  /** A switch is in another position now: these volts are what it gets once it is chosen. */
  readonly isElsewhere?: true;
  /** What each receiver that is on gives [mA]; one that shut down gives nothing. */
  readonly gives: readonly { readonly part: PartId; readonly milliamps: number; readonly isDown: boolean }[];
};

/** With more receivers the table would be longer than anybody reads: 64 rows for six. */
export const MOST_RECEIVERS = 6;

/** All combinations for a part that lives on receivers; undefined where none feeds it, or more than six could. */
export function whoIsOn(design: Design, part: PartId): WhoIsOn | undefined {
  const island = reachableIsland(design, part);
  const receivers = island.parts.filter((one) => stateKey(one) !== undefined).map(({ id }) => id);
  if (receivers.length === 0 || receivers.length > MOST_RECEIVERS) return undefined;
  const ports = portsOf(island, part);
  const states = Array.from({ length: 2 ** receivers.length }, (_, bits): OnState => {
    const on = receivers.filter((_, n) => (bits >> n) % 2 === 1);
    const supplies = supplyAlone(withStates(island, (id) => on.includes(id)));
    const own = supplies(part);
    const offers = ports.flatMap((port) => own?.feeds[port] ?? []);
    const awake = offers.filter((o) => !o.dormant);
    const isElsewhere = awake.length === 0 && offers.length > 0;
    const arriving = isElsewhere ? offers : awake;
    return {
      on,
      volts: arriving.reduce((most, offer) => Math.max(most, offer.volts), 0),
      milliamps: own?.drawsMa ?? 0,
      works: own?.powered ?? false,
      ...(isElsewhere ? { isElsewhere } : {}),
      gives: on.map((id) => {
        const record = supplies(id);
        const isDown = (record?.shutDown.length ?? 0) > 0;
        const given = Object.values(record?.demands ?? {}).reduce((sum, d) => sum + d.milliamps, 0);
        return { part: id, milliamps: isDown ? 0 : given, isDown };
      }),
    };
  });
  return { receivers, states: states.toSorted((a, b) => a.on.length - b.on.length) };
}

/**
 * All that direct current joins with a part while everybody is on, and what it joins besides while only one is: a
 * receiver's loop-out passes supply as long as the receiver sleeps.
 */
function reachableIsland(design: Design, part: PartId): Design {
  const looping = design.parts.some((one) => {
    const kind = kindOf(one.kind);
    return kind?.reception !== undefined && kind.ports(one.options).some((port) => port.side === "out");
  });
  const receivers = looping ? design.parts.filter((one) => stateKey(one) !== undefined) : [];
  const islands = [
    islandDesign(
      withStates(design, () => true),
      part,
    ),
    ...receivers.map((only) =>
      islandDesign(
        withStates(design, (id) => id === only.id),
        part,
      ),
    ),
  ];
  const ids = new Set(islands.flatMap(({ parts }) => parts.map(({ id }) => id)));
  return {
    ...design,
    parts: design.parts.filter(({ id }) => ids.has(id)),
    wires: design.wires.filter(({ from, to }) => ids.has(from[0]) && ids.has(to[0])),
  };
}

function portsOf(design: Design, id: PartId): readonly string[] {
  const part = design.parts.find((one) => one.id === id);
  return (part && kindOf(part.kind)?.power(part.options).load?.ports) ?? [];
}

/** Key of the option by which a receiver is on or off; undefined for any other part. */
function stateKey(part: Part): string | undefined {
  const kind = kindOf(part.kind);
  return kind && optionMeaning(kind, "receiver state");
}

/** The design with every receiver on or in standby. */
function withStates(design: Design, isOn: (id: PartId) => boolean): Design {
  return {
    ...design,
    parts: design.parts.map((part) => {
      const key = stateKey(part);
      if (key === undefined) return part;
      return { ...part, options: { ...part.options, [key]: isOn(part.id) ? "on" : "standby" } };
    }),
  };
}
