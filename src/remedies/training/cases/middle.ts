/** Cases where supply and command decide, not level. */
import type { TrainingCase } from "../case.ts";

export const MIDDLE: readonly TrainingCase[] = [
  {
    id: "new-converter",
    title: "A new converter, and all is worse",
    level: 3,
    story:
      "The old converter was replaced by a modern one. Now satellite shows nothing, and television in two rooms lost most channels as well.",
    design: "house-universal",
    fault: "wrong-converter:lnb=lnb-wideband",
    hints: [
      "Only the rooms that have satellite on the same cable lost television.",
      "Look at the spectrum that comes down from the dish: from where to where does it reach?",
      "It starts at some 300 MHz and lies over the television channels; the receivers cannot tune it either.",
    ],
    lesson:
      "A wideband converter fills 300 to 2350 MHz. It suits neither universal receivers nor a cable shared with UHF.",
    walk: { part: "tv1", service: "tv" },
  },
  {
    id: "one-strand",
    title: "The inserter's lamp is out",
    level: 3,
    story:
      "I made a new plug on the cable in the cupboard. The little lamp on the power unit has been out ever since.",
    design: "masthead-house",
    fault: "short-joint:down.out>psu.in",
    hints: [
      "A supply that has mains and yet gives no volts protects itself from something.",
      "Compare level and volts on both sides of the new plug.",
      "There are no volts on the line at all, and hardly any level behind the plug: inner and screen touch.",
    ],
    lesson:
      "One strand of braid in a plug takes down the supply of everything on that line. Fault and lamp may be far apart.",
    walk: { part: "tv1", service: "tv" },
  },
  {
    id: "half-the-channels",
    title: "Half of the satellite channels are missing",
    level: 3,
    story:
      "They laid a new cable through the garden. It is thick and looks good, but half of the channels are gone.",
    design: "long-copper-drop",
    fault: "steel-cable:drop",
    hints: [
      "Which half is missing? Sort the missing channels by what the receiver must ask for.",
      "It is all of the horizontal ones. Measure what the converter sees of the receiver's 18 V.",
      "Level is nearly as planned, but three to four volts stay on the new cable.",
    ],
    lesson:
      "Copper-clad steel carries the signal in its copper skin, and the supply through its steel core. On long runs use solid copper.",
    walk: { part: "sat", service: "satellite" },
  },
  {
    id: "same-numbers",
    title: "They disturb each other",
    level: 3,
    story:
      "The study got a new receiver, set up just like the one in the lounge. Now both keep losing the picture.",
    design: "single-cable-house",
    fault: "wrong-user-band:sat2=sat1",
    hints: [
      "Levels and volts are as planned everywhere. What else do the two have in common?",
      "On a channel-stacked line each tuner owns a number. Compare the numbers.",
      "Both receivers ask for user bands 1 and 2: each retunes what the other watches.",
    ],
    lesson: "On one line every tuner needs a user band of its own. Write the numbers on the plates.",
    walk: { part: "sat2", service: "satellite" },
  },
  {
    id: "who-holds-the-line",
    title: "The living room blocks the bedroom",
    level: 3,
    story:
      "In the second flat both receivers stopped after the one in the bedroom was reset to how it came from the shop.",
    design: "block-stacked",
    fault: "wrong-mode:sat22",
    hints: [
      "Only one flat suffers, and there both sets at once: it is something on that flat's own line.",
      "A channel-stacked line rests at the lower voltage between messages. Measure it there.",
      "One receiver holds the line at a steady voltage: it believes that it is alone on a switched feed.",
    ],
    lesson: "After a reset a receiver is in universal mode and silences every other one on its line.",
    walk: { part: "sat21", service: "satellite" },
  },
  {
    id: "volts-that-stop",
    title: "Television yes, satellite no",
    level: 3,
    story:
      "A colleague replaced a combining part in the loft. Television is fine in the living room, satellite is not.",
    design: "house-universal",
    fault: "wrong-leg:dip1=none",
    hints: [
      "Signal comes down the cable to that room. What has to go up?",
      "Follow the receiver's volts upwards until they stop.",
      "Volts arrive at the diplexer of the living room and do not leave it towards the dish.",
    ],
    lesson:
      "A combining part must pass supply and tone on the satellite branch: read its print before fitting.",
    walk: { part: "sat1", service: "satellite" },
  },
  {
    id: "two-leads-tidy",
    title: "Not one channel, and all is neat",
    level: 3,
    story:
      "The plate in the living room was taken off for painting and put back neatly. That receiver finds nothing now.",
    design: "house-separate-cables",
    fault: "swapped:splate1.in+in2",
    hints: [
      "Level is good on both of its inputs. Is it also the right signal?",
      "Compare the carriers on the two sockets of that plate with the plan.",
      "The socket for vertical carries horizontal, and the other way round.",
    ],
    lesson: "Mark the two leads of a wideband pair at both ends: swapped, they look perfectly well.",
    walk: { part: "sat1", service: "satellite" },
  },
];
