/** Satellite receivers for switched outputs (one or two inputs) and for the two outputs of a wideband LNB. */
import { z } from "zod";
import type { Polarisation } from "../signal/carrier.ts";
import { plural } from "../words/plural.ts";
import { define, type PartKind, type ReceiverInput } from "./contract.ts";
import { toggle, wholeNumber } from "./fields.ts";
import { coaxIn, MEMORY } from "./passive.ts";
import { IF_FROM_MHZ, IF_TO_MHZ } from "./quadrants.ts";
import { frontEndFields, frontEndOf, OVERLOAD } from "./receiverFrontEnd.ts";
import { LOOP_FIELDS, loopPorts, loopPower, loopSignal } from "./receiverLoop.ts";
import { MENU_FIELDS, menuOf, WIDEBAND_MENU_FIELD, widebandMenuOf } from "./receiverMenu.ts";
import {
  burstField,
  commandSupply,
  feedsCable,
  GIVES_FIELD,
  halfField,
  motorField,
  polarisationField,
  positionField,
  type ReceiverWish,
  requestOf,
  SHARED_LIMIT,
  STATE_WORDS,
  SUPPLY_FIELDS,
  sharing,
  suppliesOf,
  uncommittedField,
  wishWords,
} from "./receiverSupply.ts";

/** An input for an output that is switched by 13/18 V and 22 kHz. */
export function switchedInput(
  port: string,
  o: Parameters<typeof frontEndOf>[0] & MenuOptions,
): ReceiverInput {
  return {
    port,
    feed: "switched",
    services: ["satellite"],
    tunesFromMHz: IF_FROM_MHZ,
    tunesToMHz: IF_TO_MHZ,
    tuners: 1,
    frontEnd: frontEndOf(o),
    menu: menuOf(o),
  };
}

type MenuOptions = Parameters<typeof menuOf>[0];

const single = define({
  kind: "receiver-sat",
  family: "use",
  name: "Satellite receiver",
  summary:
    "Universal receiver with one input; asks by 13/18 V and 22 kHz for one quarter of the band at a time.",
  keywords: ["universal", "single", "set-top box", "DVB-S", "DVB-S2", "tuner", "TV with satellite tuner"],
  prefix: "sat",
  trade: { job: "receiver", price: 150, workMinutes: 10, onSite: "setting", takes: "switched" },
  options: z.object({
    polarisation: polarisationField("Asks now for"),
    half: halfField("Band"),
    position: positionField("Position"),
    uncommitted: uncommittedField("Uncommitted input"),
    burst: burstField("Tone burst"),
    gives: GIVES_FIELD,
    motor: motorField("Sends motor commands"),
    ...LOOP_FIELDS,
    ...SUPPLY_FIELDS,
    ...MENU_FIELDS,
    ...frontEndFields(OVERLOAD.satellite),
  }),
  symbol: "receiver-sat",
  caption: (o, comes) => (o.state === "on" ? `asks for ${wishWords(o, comes)}` : STATE_WORDS[o.state]),
  ports: (o) => [coaxIn("sat", "SAT"), ...loopPorts(o)],
  signal: (o) => ({ paths: loopSignal(o) }),
  power: (o) => ({ supplies: suppliesOf(o, "sat", requestOf(o)), paths: loopPower(o) }),
  reception: (o) => ({
    inputs: [switchedInput("sat", o)],
    wants: o.state === "on" ? ["satellite"] : [],
  }),
});

const TWIN_OPTIONS = z.object({
  polarisation1: polarisationField("Input 1 asks now for"),
  half1: halfField("Input 1, band"),
  position1: positionField("Input 1, position"),
  uncommitted1: uncommittedField("Input 1, uncommitted"),
  burst1: burstField("Input 1, tone burst"),
  motor1: motorField("Input 1 sends motor commands"),
  polarisation2: polarisationField("Input 2 asks now for", "H"),
  half2: halfField("Input 2, band", "high"),
  position2: positionField("Input 2, position"),
  uncommitted2: uncommittedField("Input 2, uncommitted"),
  burst2: burstField("Input 2, tone burst"),
  motor2: motorField("Input 2 sends motor commands"),
  ...SUPPLY_FIELDS,
  sharedLimit: SHARED_LIMIT,
  ...MENU_FIELDS,
  ...frontEndFields(OVERLOAD.satellite),
});

/** What its two inputs ask for. */
function twinWishes(o: z.output<typeof TWIN_OPTIONS>): readonly [ReceiverWish, ReceiverWish] {
  return [
    {
      polarisation: o.polarisation1,
      half: o.half1,
      position: o.position1,
      uncommitted: o.uncommitted1,
      burst: o.burst1,
      motor: o.motor1,
    },
    {
      polarisation: o.polarisation2,
      half: o.half2,
      position: o.position2,
      uncommitted: o.uncommitted2,
      burst: o.burst2,
      motor: o.motor2,
    },
  ];
}

const twin = define({
  kind: "receiver-sat-twin",
  family: "use",
  name: "Twin satellite receiver",
  summary: "Universal receiver and recorder with two inputs, each asking for its own quarter of the band.",
  keywords: ["universal", "recorder", "dual tuner", "PVR", "set-top box", "SAT>IP"],
  prefix: "twin",
  trade: { job: "receiver", price: 150, workMinutes: 10, onSite: "setting", takes: "switched" },
  options: TWIN_OPTIONS,
  symbol: "receiver-twin",
  caption: (o, comes) => {
    if (o.state !== "on") return STATE_WORDS[o.state];
    const [first, second] = twinWishes(o);
    return `asks for ${wishWords(first, comes)} | ${wishWords(second, comes)}`;
  },
  ports: () => [coaxIn("sat1", "SAT 1"), coaxIn("sat2", "SAT 2")],
  signal: () => ({}),
  power: (o) => {
    if (!feedsCable(o)) return {};
    const [first, second] = twinWishes(o);
    return {
      supplies: [
        { ...commandSupply(o, "sat1", requestOf(first)), ...sharing(o) },
        { ...commandSupply(o, "sat2", requestOf(second)), ...sharing(o) },
      ],
    };
  },
  reception: (o) => ({
    inputs: [switchedInput("sat1", o), switchedInput("sat2", o)],
    wants: o.state === "on" ? ["satellite"] : [],
  }),
});

/** IF of a wideband LNB [MHz]: 10.70–12.75 GHz less its oscillator at 10.40 GHz (10.41 GHz also exists). */
const WIDEBAND_TUNING = { tunesFromMHz: 290, tunesToMHz: 2350 };

const hybrid = define({
  kind: "receiver-hybrid",
  family: "use",
  name: "Wideband receiver",
  summary: "Receiver with two wideband inputs that hold a whole polarisation each, and many tuners.",
  keywords: ["hybrid", "two cables", "recorder", "wideband LNB", "full band", "SAT>IP", "IP server"],
  prefix: "hybrid",
  trade: { job: "receiver", price: 150, workMinutes: 10, onSite: "setting", takes: "wideband" },
  options: z.object({
    findsPolarisation: toggle({
      label: "Finds out which input is which",
      help: "Otherwise vertical belongs on V and horizontal on H.",
      default: false,
      source: MEMORY,
    }),
    aerial: toggle({ label: "Aerial input for terrestrial TV", default: false }),
    tuners: wholeNumber({ label: "Tuners", min: 1, max: 16, default: 8, source: MEMORY }),
    state: SUPPLY_FIELDS.state,
    standbySupply: SUPPLY_FIELDS.standbySupply,
    volts13: SUPPLY_FIELDS.volts13,
    limitMa: SUPPLY_FIELDS.limitMa,
    oscillator: WIDEBAND_MENU_FIELD,
    ...frontEndFields(OVERLOAD.satellite),
    sharedLimit: SHARED_LIMIT,
  }),
  symbol: "receiver-hybrid",
  caption: (o) => {
    if (o.state !== "on") return STATE_WORDS[o.state];
    const inputs = o.aerial ? "wideband and aerial" : "wideband";
    return plural(o.tuners, { one: (n) => `${n} tuner, ${inputs}`, other: (n) => `${n} tuners, ${inputs}` });
  },
  ports: (o) => [
    { ...coaxIn("v", "V", "plane"), plane: { position: 1, polarisation: "V" } },
    { ...coaxIn("h", "H", "plane"), plane: { position: 1, polarisation: "H" } },
    ...(o.aerial ? [coaxIn("ter", "aerial", "terrestrial")] : []),
  ],
  signal: () => ({}),
  power: (o) => {
    if (!feedsCable({ ...o, volts18: o.volts13 })) return {};
    // A wideband output isn't switched, so the receiver only feeds it.
    const plain = { kind: "plain" as const, volts13: o.volts13, volts18: o.volts13, limitMa: o.limitMa };
    return { supplies: ["v", "h"].map((port) => ({ port, ...plain, ...sharing(o) })) };
  },
  reception: (o) => {
    const wideband = (port: string, polarisation: Polarisation): ReceiverInput => ({
      port,
      feed: "wideband",
      services: ["satellite"],
      ...(o.findsPolarisation ? {} : { polarisation }),
      ...WIDEBAND_TUNING,
      tuners: o.tuners,
      frontEnd: frontEndOf(o),
      ...widebandMenuOf(o.oscillator),
    });
    const inputs: ReceiverInput[] = [wideband("v", "V"), wideband("h", "H")];
    if (o.aerial)
      inputs.push({
        port: "ter",
        feed: "terrestrial",
        services: ["tv"],
        tunesFromMHz: 174,
        tunesToMHz: 862,
        tuners: 1,
        frontEnd: frontEndOf({ ...o, overloadDbuv: OVERLOAD.tv.dbuv }),
      });
    if (o.state !== "on") return { inputs, wants: [] };
    return { inputs, wants: o.aerial ? ["satellite", "tv"] : ["satellite"] };
  },
});

export const SATELLITE_RECEIVERS: readonly PartKind[] = [single, twin, hybrid];
