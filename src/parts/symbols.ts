/**
 * Part symbols as plain line drawings on a 48 × 32 grid, in the manner of IEC 60617 where it has one,
 * drawn for this program. Each is a list of SVG path strings; `fill` paths are solid.
 * Signal runs from left to right, as on the canvas.
 */
export type SymbolDrawing = { readonly lines: readonly string[]; readonly fill?: readonly string[] };

const box = "M14 5 H34 V27 H14 Z";
const lead = "M3 16 H14 M34 16 H45";
/** Wave of one of three heights inside a box: a struck-out wave is a stopped band. */
const wave = (y: number) => `M18 ${y} Q21 ${y - 4} 24 ${y} T30 ${y}`;
const strike = (y: number) => `M21.5 ${y + 3} L26.5 ${y - 3}`;
const socket = (x: number, y: number) => `M${x - 3} ${y} a3 3 0 1 0 6 0 a3 3 0 1 0 -6 0`;
const dot = (x: number, y: number, r = 1.4) =>
  `M${x - r} ${y} a${r} ${r} 0 1 0 ${2 * r} 0 a${r} ${r} 0 1 0 ${-2 * r} 0 Z`;
const plate = "M12 3 H36 V29 H12 Z";
const screen = "M8 5 H40 V23 H8 Z";
const triangle = "M14 4 L36 16 L14 28 Z";
const triangleLead = "M3 16 H14 M36 16 H45";

const drawn = {
  // Sources: what stands on the roof.
  dish: {
    lines: ["M10 5 Q13 24 33 28", "M10 5 L33 28", "M20 17 L34 8", "M17 24 V29 M12 29 H22"],
    fill: [dot(35.5, 7, 2.6)],
  },
  "aerial-uhf": {
    lines: [
      "M6 11 H41",
      "M12 4 V18 M18 5 V17 M24 5.5 V16.5 M29 6 V16 M34 6.5 V15.5 M39 7 V15",
      "M10 2 V20",
      "M21 11 V29 M16 29 H26",
    ],
  },
  "aerial-vhf": {
    lines: ["M6 11 H41", "M10 2 V20 M19 3 V19 M28 4 V18 M37 5 V17", "M15 11 V29 M10 29 H20"],
  },
  "aerial-active": {
    lines: ["M4 9 H26 M8 3 V15 M14 3.5 V14.5 M20 4 V14", "M26 3 L40 9 L26 15 Z", "M14 9 V29 M9 29 H19"],
  },
  modulator: {
    lines: [box, "M34 16 H45", "M17 21 Q19 11 21 21 T25 21 T29 21 T31 18", "M18 10 H30"],
  },
  "cable-entry": {
    lines: ["M3 16 H16 M34 16 H45", "M16 6 H34 V26 H16 Z", "M20 12 H30 M20 16 H30 M20 20 H30"],
  },
  "amplifier-channel": {
    lines: [triangle, triangleLead, "M18 13 V19 M22 11 V21 M26 13 V19"],
  },
  "amplifier-inputs": {
    lines: [triangle, "M3 10 H14 M3 16 H14 M3 22 H14 M36 16 H45"],
  },
  "aerial-dab": {
    lines: ["M24 2 V9.5 M24 13.5 V21", "M24 9.5 H30 V13.5 H24", "M30 11.5 H36 V29 M31 29 H41"],
  },
  "aerial-fm": {
    lines: [
      "M8 12 Q8 5 24 5 Q40 5 40 12 Q40 19 26.5 19 M21.5 19 Q8 19 8 12",
      "M21.5 19 V22 H26.5 V19",
      "M24 22 V29 M19 29 H29",
    ],
  },
  "pick-up": {
    lines: [
      "M24 8 V29 M19 29 H29",
      "M17 3 L24 12 L31 3",
      "M4 8 L9 13 L6 15 L11 21",
      "M44 8 L39 13 L42 15 L37 21",
    ],
  },

  // Converters: the frequency changer, a square with a diagonal.
  lnb: {
    lines: [
      "M4 8 L14 12 V20 L4 24 Z",
      "M14 5 H36 V27 H14 Z",
      "M14 27 L36 5",
      "M17 11 q2 -4 4 0 t4 0",
      "M24.5 22.5 q2.2 -4 4.4 0 t4.4 0",
      "M36 16 H45",
    ],
  },
  "lnb-monoblock": {
    lines: [
      "M4 5 L14 8 V13 L4 16 Z M4 17 L14 20 V25 L4 28 Z",
      "M14 5 H36 V27 H14 Z",
      "M14 27 L36 5",
      "M17 11 q2 -4 4 0 t4 0",
      "M24.5 22.5 q2.2 -4 4.4 0 t4.4 0",
      "M36 16 H45",
    ],
  },
  "lnb-quattro": {
    lines: [
      "M4 8 L14 12 V20 L4 24 Z",
      "M14 5 H36 V27 H14 Z",
      "M14 27 L36 5",
      "M17 11 q2 -4 4 0 t4 0",
      "M36 8 H45 M36 13 H45 M36 19 H45 M36 24 H45",
    ],
  },
  "lnb-wideband": {
    lines: [
      "M4 8 L14 12 V20 L4 24 Z",
      "M14 5 H36 V27 H14 Z",
      "M14 27 L36 5",
      "M17 11 q2 -4 4 0 t4 0",
      "M23 24 V20 H33 V24",
      "M36 10 H45 M36 22 H45",
    ],
  },
  "lnb-stacked": {
    lines: [
      "M4 8 L14 12 V20 L4 24 Z",
      "M14 5 H36 V27 H14 Z",
      "M14 27 L36 5",
      "M17 11 q2 -4 4 0 t4 0",
      "M36 16 H45",
    ],
    fill: ["M24.5 24 v-3 h2 v3 Z", "M28 24 v-5 h2 v5 Z", "M31.5 24 v-7 h2 v7 Z"],
  },
  stacking: {
    lines: ["M12 4 H36 V28 H12 Z", "M3 8 H12 M3 13 H12 M3 19 H12 M3 24 H12 M36 16 H45", "M16 23.5 H32"],
    fill: ["M17 22 v-5 h3 v5 Z", "M22.5 22 v-9 h3 v9 Z", "M28 22 v-13 h3 v13 Z"],
  },
  multiswitch: {
    lines: ["M10 4 H38 V27 H10 Z", "M3 9 H38 M3 14 H38 M3 19 H38", "M17 9 V31 M24 14 V31 M31 19 V31"],
    fill: [dot(17, 9), dot(24, 14), dot(31, 19)],
  },
  "position-switch": {
    lines: ["M3 6 H16 M3 13 H16 M3 19 H16 M3 26 H16", "M33 16 L18.5 7", "M33 16 H45"],
    fill: [dot(17, 6), dot(17, 13), dot(17, 19), dot(17, 26), dot(33, 16, 1.8)],
  },

  // Joining and splitting: a half disc with its round side towards the common line.
  splitter: { lines: ["M28 4 A12 12 0 0 0 28 28 Z", "M3 16 H16", "M28 10 H45 M28 22 H45"] },
  "splitter-resistive": {
    lines: [
      "M3 16 H7 M7 13 H17 V19 H7 Z M17 16 H24",
      "M24 16 L28 8.5 H30 M24 16 L28 23.5 H30",
      "M30 5.5 H40 V11.5 H30 Z M40 8.5 H45",
      "M30 20.5 H40 V26.5 H30 Z M40 23.5 H45",
    ],
    fill: [dot(24, 16)],
  },
  tap: { lines: ["M3 13 H45", "M16 13 a8 8 0 1 0 16 0 a8 8 0 1 0 -16 0", "M24 21 V31"], fill: [dot(24, 13)] },
  "t-joint": { lines: ["M3 16 H45", "M24 16 V31"], fill: [dot(24, 16, 2)] },
  combiner: { lines: ["M20 4 A12 12 0 0 1 20 28 Z", "M32 16 H45", "M3 10 H20 M3 22 H20"] },
  diplexer: {
    lines: [box, "M14 16 H34", wave(10.5), strike(10.5), wave(21.5), "M3 10.5 H14 M3 21.5 H14 M34 16 H45"],
  },
  "diplexer-split": {
    lines: [box, "M14 16 H34", wave(10.5), strike(10.5), wave(21.5), "M3 16 H14 M34 10.5 H45 M34 21.5 H45"],
  },
  triplexer: {
    lines: [
      box,
      "M14 12.3 H34 M14 19.7 H34",
      "M18 9 q3 -3 6 0 t6 0",
      "M18 16 q3 -3 6 0 t6 0",
      "M18 23.3 q3 -3 6 0 t6 0",
      "M3 8.5 H14 M3 16 H14 M3 23.5 H14 M34 16 H45",
    ],
  },
  "triplexer-split": {
    lines: [
      box,
      "M14 12.3 H34 M14 19.7 H34",
      "M18 9 q3 -3 6 0 t6 0",
      "M18 16 q3 -3 6 0 t6 0",
      "M18 23.3 q3 -3 6 0 t6 0",
      "M3 16 H14 M34 8.5 H45 M34 16 H45 M34 23.5 H45",
    ],
  },
  filter: { lines: [box, lead, wave(9.5), strike(9.5), wave(16), wave(22.5), strike(22.5)] },
  notch: { lines: [box, lead, wave(9.5), wave(16), strike(16), wave(22.5)] },
  lowpass: { lines: [box, lead, wave(11.5), strike(11.5), wave(20.5)] },
  "filter-channel": { lines: [box, lead, "M16 23 H18 V12 H21 V23 H23 V9 H26 V23 H28 V14 H31 V23 H32.5"] },

  // Amplifying and trimming.
  amplifier: { lines: [triangle, triangleLead] },
  masthead: { lines: ["M16 8 L38 19 L16 30 Z", "M38 19 H45", "M8 2 V30 M3 2 L8 8 L13 2", "M8 19 H16"] },
  "amplifier-if": { lines: [triangle, triangleLead, "M16.5 16 q2.5 -5 5 0 t5 0"] },
  // A motor, a circle with M, in a line that goes on.
  "dish-motor": {
    lines: [
      "M12 16 a12 12 0 1 0 24 0 a12 12 0 1 0 -24 0",
      "M3 16 H12 M36 16 H45",
      "M19 21 V11 L24 17 L29 11 V21",
    ],
  },
  // Several lines through one amplifier.
  "trunk-amplifier": {
    lines: ["M15 3 V29 L37 16 Z", "M3 9 H15 M3 16 H15 M3 23 H15", "M37 16 H45 M26 9.5 H45 M26 22.5 H45"],
  },
  attenuator: {
    lines: [
      "M10 7 H38 V25 H10 Z",
      "M3 16 H10 M38 16 H45",
      "M21.5 10.5 V21 M21.5 18 a3 3 0 1 0 -6 0 a3 3 0 1 0 6 0",
      "M26 11 V21 M26 11 H29.5 q2.6 0 2.6 2.4 T29.5 15.8 H26 M29.5 15.8 q3.2 0 3.2 2.6 T29.5 21 H26",
    ],
  },
  equaliser: { lines: [box, lead, "M17 24 V8 M17 24 H31", "M18.5 21 Q24 19 30.5 9.5"] },
  inserter: {
    lines: ["M3 11 H45", "M24 11 V17", "M17 17 H31 M20.5 20.5 H27.5", "M24 20.5 V29 M18 29 H30"],
    fill: [dot(24, 11), "M9 7.5 L4 11 L9 14.5 Z"],
  },
  "dc-block": { lines: ["M3 16 H21 M27 16 H45", "M21 7 V25 M27 7 V25"] },
  load: {
    lines: ["M3 11 H14 M14 7 H34 V15 H14 Z", "M34 11 H40 V21", "M34.5 21 H45.5 M37 24.5 H43 M39 28 H41"],
  },

  // Running: the coaxial line.
  cable: { lines: ["M3 14 H45", "M18 14 a6 6 0 1 0 12 0 a6 6 0 1 0 -12 0", "M14 20 H34"] },
  "bad-joint": { lines: ["M3 16 H15 M33 16 H45", "M15 9 V23 M33 9 V23", "M27 3 L20 15 H28 L21 29"] },
  "line-fitting": {
    lines: [
      "M3 16 H16 M32 16 H45",
      "M16 10 H32 V22 H16 Z M20 10 V22 M28 10 V22",
      "M24 22 V26 M18 26 H30 M21 29 H27",
    ],
  },

  // Delivering: a plate with its sockets.
  "outlet-1": { lines: [plate, socket(24, 16)], fill: [dot(24, 16, 1)] },
  "outlet-2": { lines: [plate, socket(24, 10), socket(24, 22)], fill: [dot(24, 10, 1), dot(24, 22, 1)] },
  "outlet-3": {
    lines: [plate, socket(18.5, 10), socket(29.5, 10), socket(24, 22)],
    fill: [dot(18.5, 10, 1), dot(29.5, 10, 1), dot(24, 22, 1)],
  },
  "outlet-4": {
    lines: [plate, socket(18.5, 10), socket(29.5, 10), socket(18.5, 22), socket(29.5, 22)],
    fill: [dot(18.5, 10, 1), dot(29.5, 10, 1), dot(18.5, 22, 1), dot(29.5, 22, 1)],
  },
  "outlet-through": {
    lines: ["M3 8 H45", "M24 8 V14", "M14 14 H34 V29 H14 Z", socket(24, 21.5)],
    fill: [dot(24, 8), dot(24, 21.5, 1)],
  },

  // Using.
  "receiver-tv": { lines: [screen, "M18 28 H30 M24 23 V28"] },
  "receiver-radio": {
    lines: [
      "M7 9 H41 V27 H7 Z",
      "M12 18 a5 5 0 1 0 10 0 a5 5 0 1 0 -10 0",
      "M27 14 H37 M27 18 H37",
      "M33 9 L40 2",
    ],
    fill: [dot(29, 23), dot(35, 23)],
  },
  "receiver-sat": {
    lines: ["M5 17 H43 V28 H5 Z", "M9 21 H23", "M17 4 Q18 12 27 13.5 M17 4 L27 13.5 M22 9 L27 5.5"],
    fill: [dot(33, 22.5), dot(38, 22.5), dot(28, 4.8, 1.6)],
  },
  "receiver-twin": {
    lines: [
      "M5 17 H43 V28 H5 Z",
      "M9 21 H23 M9 24.5 H23",
      "M9 4 Q10 12 19 13.5 M9 4 L19 13.5 M14 9 L19 5.5",
      "M27 4 Q28 12 37 13.5 M27 4 L37 13.5 M32 9 L37 5.5",
    ],
    fill: [dot(33, 22.5), dot(38, 22.5), dot(20, 4.8, 1.6), dot(38, 4.8, 1.6)],
  },
  "receiver-hybrid": {
    lines: [screen, "M18 28 H30 M24 23 V28", "M17 9 Q18 17 28 18.5 M17 9 L28 18.5 M22.5 14 L27 11"],
    fill: [dot(28, 10.3, 1.6)],
  },
  "receiver-stacked": {
    lines: ["M5 17 H43 V28 H5 Z", "M9 21 H23", "M14 13 H34"],
    fill: [
      dot(33, 22.5),
      dot(38, 22.5),
      "M16 11.5 v-3 h3 v3 Z",
      "M22.5 11.5 v-6 h3 v6 Z",
      "M29 11.5 v-9 h3 v9 Z",
    ],
  },
  meter: {
    lines: [
      "M3 16 H11 M37 16 H45",
      "M11 16 a13 13 0 1 0 26 0 a13 13 0 1 0 -26 0",
      "M16 18 A9 9 0 0 1 32 18",
      "M24 22 L29 12",
    ],
    fill: [dot(24, 22, 1.8)],
  },
} satisfies Record<string, SymbolDrawing>;

export type SymbolName = keyof typeof drawn;

export const SYMBOLS: Readonly<Record<SymbolName, SymbolDrawing>> = drawn;
