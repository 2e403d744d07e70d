/** Cases for the first weeks: one line, one part, one measurement. */
import type { CaseWords } from "../caseWords.ts";

export const EASY_WORDS: Readonly<Record<string, CaseWords>> = {
  "lounge-dark": {
    title: "No picture in the lounge",
    story:
      "Since the decorators were here the television in the lounge shows nothing. The one in the kitchen is fine.",
    hints: [
      "One set works. Whatever both sets have in common must be in order.",
      "Start where the ways to the two sets part, and measure the level on the lounge’s side.",
      "There is level at the splitter’s first output, and none at the other end of the plug.",
    ],
    lesson:
      "Ask what works before asking what does not: it clears half of the system without a tool in the hand.",
  },
  "whole-house-weak": {
    title: "Three rooms lose their channels",
    story: "Three of our four televisions lost nearly all channels overnight. Satellite is as good as ever.",
    hints: [
      "Several rooms fail at once, so look at what those rooms share.",
      "Compare the level at the loft’s input with that at its outputs.",
      "What should give a few decibels takes some twenty: it is not being fed.",
    ],
    lesson: "An amplifier without mains still lets a little through. The shortest cable hides it longest.",
  },
  "swapped-at-the-plate": {
    title: "Nothing works behind the new cupboard",
    story:
      "We moved the bedroom cupboard and plugged everything in again. Now neither television nor satellite works there.",
    hints: [
      "Two services fail in one room at the same moment, and somebody had hands on it.",
      "Measure at each lead what it carries, and not only whether there is something.",
      "The leads at the bedroom’s outlet carry good levels, each of the wrong service.",
    ],
    lesson: "Level alone proves little: look at which frequencies are there.",
  },
  "floors-below": {
    title: "Dark from the third floor down",
    story: "The fifth and fourth floors have perfect pictures; the third, second and first have none at all.",
    hints: [
      "On one riser whatever is below a break goes dark, and whatever is above does not notice.",
      "The break lies between the last floor that works and the first that does not.",
      "Level leaves the fourth floor’s outlet; follow it to the next plug.",
    ],
    lesson:
      "On a riser the pattern of floors points at the break: between the last good and the first bad one.",
  },
  "after-the-storm": {
    title: "Satellite gone after the storm",
    story:
      "It blew hard last night. Both satellite receivers say “no signal”. Television from the aerial is fine.",
    hints: [
      "Both receivers fail alike, and terrestrial does not: look at what only satellite uses.",
      "Check that the supply arrives on the roof, and what level comes down.",
      "Supply and tone are right, and something comes down, only some ten decibels too little and all noise.",
    ],
    lesson:
      "A dish a beamwidth off still gives noise and a little level: it is the C/N that says whether it points right.",
  },
  "turned-by-the-wind": {
    title: "Every channel breaks up",
    story:
      "Both televisions went to blocks and then to nothing, all channels alike. Nobody has touched anything.",
    hints: [
      "Everything fails alike on both sets: start as high up as is safe to reach.",
      "The supply for the roof is there. Compare the level at the masthead’s output with the plan.",
      "All channels are down by the same thirty-odd decibels, before anything has amplified them.",
    ],
    lesson:
      "The same loss on every channel and at every set points to the source. Going up there is work for whoever is trained and equipped for it.",
  },
  "dark-cupboard": {
    title: "No picture since the power cut",
    story: "We had a power cut. Everything came back except the televisions: “no signal” on both of them.",
    hints: [
      "What in the chain needs electricity, and where does it get it from?",
      "Measure the voltage on the cable that leads up to the roof.",
      "No volts leave the cupboard upwards: the amplifier at the mast is dark.",
    ],
    lesson: "A masthead amplifier is fed through its own cable. No volts up, no signal down.",
  },
  "three-of-eight": {
    title: "Three of eight channels are gone",
    story:
      "Since the gale three channels are gone on all three televisions. The other five are as clear as before.",
    hints: [
      "Three fail and five do not, at every set alike. Ask where each channel comes from.",
      "Compare the level of the lost channels with the plan, at each input on the mast.",
      "The input for the harbour gets some thirty decibels less than planned; the other two inputs are right.",
    ],
    lesson:
      "Sort lost channels by their transmitter: if one transmitter is missing, look at its aerial. Roofs are for those trained and equipped for them.",
  },
  "after-the-reset": {
    title: "The parlour set was set up again",
    story:
      "The set in the parlour got new software and asked for everything again. Since then neither set finds a channel.",
    hints: [
      "Two sets fail at once, and work was done at one of them. What does that one do for the other?",
      "Something up at the gable needs a supply. Measure the volts on the cable there.",
      "No volts leave the parlour set: its menu no longer feeds what it fed before.",
    ],
    lesson:
      "Where a set feeds the amplifier in the aerial, every other set depends on its menu and on its mains.",
  },
  "new-plate-on-the-fourth": {
    title: "A new outlet on the fourth floor",
    story:
      "The caretaker replaced a broken outlet on the fourth floor. Since then the three floors below are dark.",
    hints: [
      "The work was done where everything works, and the trouble is below it.",
      "Measure what goes into the new outlet and what goes on from it.",
      "Signal goes in and nothing goes on: it is made for the foot of a riser.",
    ],
    lesson:
      "A loop-through outlet passes the line on, a terminated one ends it. From the front they look the same.",
  },
};
