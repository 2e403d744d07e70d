/** Cases where several faults would look alike, or where the culprit sits far from what fails. */
import type { CaseWords } from "../caseWords.ts";

export const HARD_WORDS: Readonly<Record<string, CaseWords>> = {
  "top-goes-first": {
    title: "Some channels vanish every wet month",
    story: "In the barn more and more satellite channels disappear, first some, now more than half of them.",
    hints: [
      "Sort the missing channels by frequency, and not by programme.",
      "Measure the level across the band before and behind each length of cable.",
      "One length loses far more at the top of the band than its metres would explain.",
    ],
    lesson: "Water makes the loss grow with frequency. A cable that has drawn water is replaced, not dried.",
  },
  "tired-receiver": {
    title: "One flat gets only vertical",
    story: "Flat 4 gets half of the channels. All other flats are happy. The cable was checked twice.",
    hints: [
      "What is common to all flats works. Stay in this flat.",
      "Only horizontal is missing. Measure the volts at the outlet while horizontal is asked for.",
      "Even at the receiver’s own socket there are only fifteen volts.",
    ],
    lesson: "Measure the supply at its source first: a tired receiver looks just like a bad cable.",
  },
  "splendid-level": {
    title: "More level than ever, and no picture",
    story:
      "Somebody turned a screw in the attic because one floor was a little weak. Now no floor has a picture.",
    hints: [
      "Measure before you turn: is there too little, or too much?",
      "Level is far above the plan everywhere. Look at the MER, and where it starts to be bad.",
      "Before the riser amplifier the MER is fine, behind it there is next to none: it is overdriven.",
    ],
    lesson:
      "Each decibel too much at the output costs two of the distance to its products. Stay below rating less derating.",
  },
  "second-satellite": {
    title: "The second satellite has gone",
    story: "All channels of one satellite are there, and not one of the other. It began after the frost.",
    hints: [
      "What is common to both satellites works.",
      "Let the second satellite be asked for, and follow volts and level beyond the switch.",
      "The supply leaves for the second LNB and does not get there, with every plug on.",
    ],
    lesson: "A broken inner conductor stops DC first. A plug that is on is not a plug that makes contact.",
  },
  "new-neighbour": {
    title: "A mast was built nearby",
    story:
      "A phone mast went up beyond the field, and a colleague was here to see to it. Since his visit nothing works on either set.",
    hints: [
      "Plenty of level, no picture: look above the television channels too.",
      "Measure level and MER before and behind what amplifies on the mast.",
      "The mast’s carriers reach the amplifier at full strength, stronger than all television channels.",
    ],
    lesson: "A filter belongs before the first amplifier; behind it the harm is done already.",
  },
  "mast-over-the-road": {
    title: "A strong signal and a black screen",
    story:
      "A colleague tidied up on the roof. Since then both sets are black, though their menus show full strength.",
    hints: [
      "Nothing in this house amplifies. What else can be too strong?",
      "Look at the whole spectrum at a set’s input, and not only at the television channels.",
      "The phone mast comes in some forty decibels above the channels, and the tuners are blocked.",
    ],
    lesson:
      "A tuner is blocked by the sum of all that it lets in. A good level of the wanted channel proves nothing there.",
  },
  "louder-is-better": {
    title: "The amplifier was turned up",
    story:
      "Flat 6 asked for more level, so somebody turned the building amplifier up. Now no flat has a picture.",
    hints: [
      "All flats fail alike: the trouble sits before their ways part.",
      "Measure level and MER before and behind what all flats share.",
      "What goes in is clean; what comes out is some forty decibels stronger, and spoilt.",
    ],
    lesson:
      "256QAM needs a clean 32 dB: a cable network stands less overdrive than terrestrial television. Turn down, then measure MER.",
  },
  "one-of-two-satellites": {
    title: "One satellite, poor in everything",
    story:
      "Somebody brushed against the dish with a ladder. One satellite is fine, of the other hardly a channel is left.",
    hints: [
      "Both rooms lack the same satellite, so both cables and both switches are innocent.",
      "Ask for that satellite and compare level and C/N with the plan.",
      "The level has hardly fallen and volts are right, yet the C/N is gone: the two polarisations mix.",
    ],
    lesson:
      "Each LNB on a dish has its own skew. Good level with poor C/N in both polarisations means: turn it by the meter.",
  },
  "four-outputs-each": {
    title: "The LNB has four outputs, as before",
    story:
      "The LNB was replaced by one with four outputs, like the old one. All flats have lost half of their channels.",
    hints: [
      "All flats lack the same half. Which one, and who usually decides about it?",
      "Compare what comes down the four trunks: they should differ.",
      "Trunks that should carry the high band carry the low one: each output waits for a tone that a multiswitch does not send.",
    ],
    lesson: "Four outputs make no quattro: before a multiswitch each output must be fixed to its quadrant.",
  },
  "prettier-plate": {
    title: "A prettier outlet",
    story:
      "In bedroom 1 the outlet was changed for one with more sockets. Some channels are gone, most are fine.",
    hints: [
      "Sort the missing channels by frequency on the cable.",
      "Compare the band on both sides of the outlet, on each of the two cables.",
      "One of the cables loses all that lies below some 950 MHz: that outlet separates television and satellite.",
    ],
    lesson:
      "A wideband feed needs plain outlets: a separating one takes off what lies in the television range.",
  },
  "green-copper": {
    title: "Television plays, satellite does not",
    story:
      "In the living room television and radio play, but satellite has gone, slowly and then altogether.",
    hints: [
      "The higher the frequency, the worse. And what about the supply?",
      "Measure level at both ends of the living room’s cable, low and high in frequency.",
      "Between cable and outlet some decibels are lost at the bottom and very many at the top.",
    ],
    lesson:
      "Corrosion acts twice: it attenuates the signal, more at the top, and it takes volts from the supply.",
  },
  "ten-centimetres": {
    title: "One multiplex is missing in the lounge",
    story:
      "The lounge was papered and its outlet put back. Since then a few programmes are gone there; the kitchen has them all.",
    hints: [
      "Sort the missing programmes by channel: do they share one?",
      "Compare the levels of all channels before and behind the outlet with those in the kitchen.",
      "A deep notch sits on one channel, and its neighbours are weakened too. What hangs on that line beside the outlet?",
    ],
    lesson:
      "An unused tail of cable is no harmless end: cut it off at the joint, or end it with 75 Ω on a splitter’s leg.",
  },
  "fifth-lead": {
    title: "Five leads, all in place",
    story:
      "The multiswitch was moved to another wall. Since then no flat has television, and all miss a quarter of satellite.",
    hints: [
      "Two unlike things fail together for everybody: that is where they meet.",
      "Measure at each input what it carries, one after the other.",
      "One satellite input carries television, and the terrestrial input a satellite quadrant.",
    ],
    lesson:
      "A quarter of satellite missing is one quadrant missing. Number the leads before taking them off.",
  },
};
