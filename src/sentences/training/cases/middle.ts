/** Cases where supply and command decide, not level. */
import type { CaseWords } from "../caseWords.ts";

export const MIDDLE_WORDS: Readonly<Record<string, CaseWords>> = {
  "new-converter": {
    title: "A new LNB, and all is worse",
    story:
      "The old LNB was replaced by a modern one. Now satellite shows nothing, and television in two rooms lost most channels as well.",
    hints: [
      "Only the rooms that have satellite on the same cable lost television.",
      "Look at the spectrum that comes down from the dish: from where to where does it reach?",
      "It starts at some 300 MHz and lies over the television channels; the receivers cannot tune it either.",
    ],
    lesson:
      "A wideband LNB fills 300 to 2350 MHz. It suits neither universal receivers nor a cable shared with UHF.",
  },
  "from-the-van": {
    title: "A new LNB from the van",
    story:
      "Water had got into the LNB of the large dish. My colleague fitted a new one from the van, and there is not one channel.",
    hints: [
      "Both receivers have lost everything at once. What do they have in common?",
      "Measure at the LNB: volts arrive, and noise comes out. Is there a single carrier?",
      "At which frequency does this satellite send, and what does the label of the new LNB say?",
    ],
    lesson:
      "A large dish often looks at C band, about 4 GHz. A universal LNB takes Ku band only: read the label before you climb.",
  },
  "one-strand": {
    title: "The inserter’s lamp is out",
    story:
      "I made a new plug on the cable in the cupboard. The little lamp on the power unit has been out ever since.",
    hints: [
      "A supply that has mains and yet gives no volts protects itself from something.",
      "Compare level and volts on both sides of the new plug.",
      "There are no volts on the line at all, and hardly any level behind the plug: inner conductor and screen touch.",
    ],
    lesson:
      "One strand of braid in a plug takes down the supply of everything on that line. Fault and lamp may be far apart.",
  },
  "half-the-channels": {
    title: "Half of the satellite channels are missing",
    story:
      "They laid a new cable through the garden. It is thick and looks good, but half of the channels are gone.",
    hints: [
      "Which half is missing? Sort the missing channels by what the receiver must ask for.",
      "It is all of the horizontal ones. Measure what the LNB sees of the receiver’s 18 V.",
      "Level is nearly as planned, but three to four volts stay on the new cable.",
    ],
    lesson:
      "Copper-clad steel carries the signal in its copper skin, and the supply through its steel core. On long runs use solid copper.",
  },
  "first-frost": {
    title: "Nothing since the first frost",
    story:
      "The night was cold. This morning I wanted another satellite, heard a hum outside, and now no channel is left.",
    hints: [
      "Everything is lost at once. Look at what must go up the cable before anything can come down.",
      "Measure the volts at both ends of the cable to the lawn, and compare them with the plan.",
      "The volts have collapsed as soon as they leave the receiver: what sits behind the cable draws far too much.",
    ],
    lesson:
      "Motor and LNB share one supply. Add up what both draw while it turns, and keep it below the receiver’s limit.",
  },
  "same-numbers": {
    title: "They disturb each other",
    story:
      "The study got a new receiver, set up just like the one in the lounge. Now both keep losing the picture.",
    hints: [
      "Levels and volts are as planned everywhere. What else do the two have in common?",
      "On a single-cable line each tuner owns a number. Compare the numbers.",
      "Both receivers ask for user bands 1 and 2: each retunes what the other watches.",
    ],
    lesson: "On one line every tuner needs a user band of its own. Write the numbers on the outlets.",
  },
  "who-holds-the-line": {
    title: "The living room blocks the bedroom",
    story:
      "In the second flat both receivers stopped after the one in the bedroom was reset to how it came from the shop.",
    hints: [
      "Only one flat suffers, and there both sets at once: it is something on that flat’s own line.",
      "A single-cable line rests at the lower voltage between messages. Measure it there.",
      "One receiver holds the line at a steady voltage: it believes that it is alone on a switched feed.",
    ],
    lesson: "After a reset a receiver is in universal mode and silences every other one on its line.",
  },
  "volts-that-stop": {
    title: "Television yes, satellite no",
    story:
      "A colleague replaced a combiner in the loft. Television is fine in the living room, satellite is not.",
    hints: [
      "Signal comes down the cable to that room. What has to go up?",
      "Follow the receiver’s volts upwards until they stop.",
      "Volts arrive at the diplexer of the living room and do not leave it towards the dish.",
    ],
    lesson: "A diplexer must pass DC and 22 kHz on the satellite branch: read the label before fitting it.",
  },
  "two-leads-tidy": {
    title: "Not one channel, and all is neat",
    story:
      "The outlet in the living room was taken off for painting and put back neatly. That receiver finds nothing now.",
    hints: [
      "Level is good on both of its inputs. Is it also the right signal?",
      "Compare the carriers on the two sockets of that outlet with the plan.",
      "The socket for vertical carries horizontal, and the other way round.",
    ],
    lesson: "Mark the two leads of a wideband pair at both ends: swapped, they look perfectly well.",
  },
};
