/** Cases for the first weeks: one line, one part, one measurement. */
import type { TrainingCase } from "../case.ts";

export const EASY: readonly TrainingCase[] = [
  {
    id: "lounge-dark",
    title: "No picture in the lounge",
    level: 1,
    story:
      "Since the decorators were here the television in the lounge shows nothing. The one in the kitchen is fine.",
    design: "masthead-house",
    fault: "plug-off:split.out1>drop1.in",
    hints: [
      "One set works. Whatever both sets have in common must be in order.",
      "Start where the ways to the two sets part, and measure the level on the lounge's side.",
      "There is level at the splitter's first output, and none at the other end of the plug.",
    ],
    lesson:
      "Ask what works before asking what does not: it clears half of the system without a tool in the hand.",
    walk: { part: "tv1", service: "tv" },
  },
  {
    id: "whole-house-weak",
    title: "Three rooms lose their channels",
    level: 1,
    story: "Three of our four televisions lost nearly all channels overnight. Satellite is as good as ever.",
    design: "house-universal",
    fault: "mains-off:amp",
    hints: [
      "Several rooms fail at once, so look at what those rooms share.",
      "Compare the level at the loft's input with that at its outputs.",
      "What should give a few decibels takes some twenty: it is not being fed.",
    ],
    lesson: "An amplifier without mains still lets a little through. The shortest cable hides it longest.",
    walk: { part: "tv1", service: "tv" },
  },
  {
    id: "swapped-at-the-plate",
    title: "Nothing works behind the new cupboard",
    level: 1,
    story:
      "We moved the bedroom cupboard and plugged everything in again. Now neither television nor satellite works there.",
    design: "house-universal",
    fault: "swapped:plate2.tv+sat",
    hints: [
      "Two services fail in one room at the same moment, and somebody had hands on it.",
      "Measure at each lead what it carries, and not only whether there is something.",
      "The leads at the bedroom's plate carry good levels, each of the wrong service.",
    ],
    lesson: "Level alone proves little: look at which frequencies are there.",
    walk: { part: "tv2", service: "tv" },
  },
  {
    id: "floors-below",
    title: "Dark from the third floor down",
    level: 1,
    story: "The fifth and fourth floors have perfect pictures; the third, second and first have none at all.",
    design: "riser-block",
    fault: "plug-off:run3.out>plate3.in",
    hints: [
      "On one riser whatever is below a break goes dark, and whatever is above does not notice.",
      "The break lies between the last floor that works and the first that does not.",
      "Level leaves the fourth floor's plate; follow it to the next plug.",
    ],
    lesson:
      "On a riser the pattern of floors points at the break: between the last good and the first bad one.",
    walk: { part: "tv3", service: "tv" },
  },
  {
    id: "after-the-storm",
    title: "Satellite gone after the storm",
    level: 2,
    story:
      "It blew hard last night. Both satellite receivers say “no signal”. Television from the aerial is fine.",
    design: "house-universal",
    fault: "dish-off:dish",
    hints: [
      "Both receivers fail alike, and terrestrial does not: look at what only satellite uses.",
      "Check that the supply arrives on the roof, and what level comes down.",
      "Supply and tone are right, and something comes down, only some ten decibels too little and all noise.",
    ],
    lesson:
      "A dish a beamwidth off still gives noise and a little level: it is the C/N that says whether it points right.",
    walk: { part: "sat1", service: "satellite" },
  },
  {
    id: "turned-by-the-wind",
    title: "Every channel breaks up",
    level: 2,
    story:
      "Both televisions went to blocks and then to nothing, all channels alike. Nobody has touched anything.",
    design: "masthead-house",
    fault: "aerial-off:uhf",
    hints: [
      "Everything fails alike on both sets: start as high up as is safe to reach.",
      "The supply for the roof is there. Compare the level at the masthead's output with the plan.",
      "All channels are down by the same thirty-odd decibels, before anything has amplified them.",
    ],
    lesson:
      "The same loss on every channel and at every set points to the source. Going up there is work for whoever is trained and equipped for it.",
    walk: { part: "tv1", service: "tv" },
  },
  {
    id: "dark-cupboard",
    title: "No picture since the power cut",
    level: 2,
    story: "We had a power cut. Everything came back except the televisions: “no signal” on both of them.",
    design: "masthead-house",
    fault: "mains-off:psu",
    hints: [
      "What in the chain needs electricity, and where does it get it from?",
      "Measure the voltage on the cable that leads up to the roof.",
      "No volts leave the cupboard upwards: the amplifier at the mast is dark.",
    ],
    lesson: "A masthead amplifier is fed through its own cable. No volts up, no signal down.",
    walk: { part: "tv1", service: "tv" },
  },
  {
    id: "new-plate-on-the-fourth",
    title: "A new plate on the fourth floor",
    level: 2,
    story:
      "The caretaker replaced a broken plate on the fourth floor. Since then the three floors below are dark.",
    design: "riser-block",
    fault: "wrong-plate:plate4=outlet-end",
    hints: [
      "The work was done where everything works, and the trouble is below it.",
      "Measure what goes into the new plate and what goes on from it.",
      "Signal goes in and nothing goes on: it is made for the foot of a riser.",
    ],
    lesson:
      "A through plate hands the line on, an end plate terminates it. From the front they look the same.",
    walk: { part: "tv3", service: "tv" },
  },
];
