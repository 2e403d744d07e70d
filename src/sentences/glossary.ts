/** The terms of the trade that the app uses, each in a sentence or two for whoever meets it for the first time. */
import type { RuleId } from "../findings/facts.ts";

export type GlossaryEntry = {
  /** One term, or several that are told together. */
  readonly terms: readonly [string, ...string[]];
  readonly meaning: string;
};

/** By the alphabet of the first term. */
export const GLOSSARY = [
  {
    terms: ["13/18 V"],
    meaning: "Supply from the receiver to the LNB. 13 V asks for vertical signals, 18 V for horizontal ones.",
  },
  {
    terms: ["22 kHz"],
    meaning: "A tone on the receiver’s supply. It asks for the high band, and messages are made of it.",
  },
  {
    terms: ["4G/5G filter"],
    meaning: "Keeps mobile radio out of the TV range. Its place is before the first amplifier.",
  },
  {
    terms: ["Attenuator"],
    meaning: "Lowers every signal by the same number of decibels, where there is too much of it.",
  },
  {
    terms: ["Azimuth", "Elevation"],
    meaning:
      "Where a dish looks: azimuth is the direction, clockwise from true north; elevation is the height above the horizon.",
  },
  {
    terms: ["Balance outlets"],
    meaning: "To choose taps, attenuators and gains so that all outlets come near to one level.",
  },
  {
    terms: ["Band edge"],
    meaning:
      "The highest frequency that is still used for television. What lies above it is mobile radio now.",
  },
  {
    terms: ["Bonding"],
    meaning: "Connecting mast, screens and equipment to earth, so that no dangerous voltage can appear.",
  },
  {
    terms: ["C/I"],
    meaning: "How far a carrier lies above other signals on its frequencies, in decibels.",
  },
  {
    terms: ["C/N"],
    meaning: "How far a carrier lies above noise, in decibels. Each modulation needs its own least C/N.",
  },
  {
    terms: ["Carrier"],
    meaning:
      "One signal with a frequency of its own: a TV channel, a DAB block, an FM station or a transponder.",
  },
  {
    terms: ["Combiner"],
    meaning: "Brings several lines onto one. It does not filter, so the lines may not share frequencies.",
  },
  {
    terms: ["Copper-clad steel"],
    meaning:
      "Cable with a steel core in a skin of copper. Signals run in the skin; the supply loses more volts.",
  },
  {
    terms: ["dBµV"],
    meaning: "Unit of level: decibels above a microvolt. 6 dB more is twice the voltage, 20 dB ten times.",
  },
  {
    terms: ["DC and 22 kHz pass"],
    meaning: "The way through a part for the receiver’s supply and commands, up to LNB or multiswitch.",
  },
  {
    terms: ["DC block"],
    meaning: "Lets signals through and stops the supply.",
  },
  {
    terms: ["Derating"],
    meaning: "How much less than its rated output an amplifier may give when it carries many carriers.",
  },
  {
    terms: ["Diplexer", "Triplexer"],
    meaning:
      "Puts two (or three) ranges onto one cable, such as TV and satellite, or takes them apart again.",
  },
  {
    terms: ["Drop"],
    meaning: "The last cable, from splitter, tap or multiswitch to one outlet.",
  },
  {
    terms: ["EIRP"],
    meaning: "How strongly a satellite transmits towards the site. Its footprint map shows it, in dBW.",
  },
  {
    terms: ["Equaliser"],
    meaning: "Takes more from the low end than from the high end, to make good for what cable does.",
  },
  {
    terms: ["Faulty joint"],
    meaning:
      "A corroded, wet, broken or shorted connection, or one without its screen. Put one in to see what it would do.",
  },
  {
    terms: ["Gain"],
    meaning: "How much a part raises level, in decibels; loss is the opposite.",
  },
  {
    terms: ["In-line IF amplifier"],
    meaning: "A small amplifier for satellite signals in the cable, fed by the receiver’s own supply.",
  },
  {
    terms: ["Ingress"],
    meaning: "Signals that get into a cable from outside, such as those of a phone mast or a cordless phone.",
  },
  {
    terms: ["Isolation"],
    meaning: "How much weaker a signal is after its way from one outlet to another, in decibels.",
  },
  {
    terms: ["Legacy (switched) output"],
    meaning: "Output of an SCR/dSCR LNB for an ordinary receiver, which asks by 13/18 V and 22 kHz.",
  },
  {
    terms: ["Level"],
    meaning: "How strong a carrier is at one place, in dBµV. Outlets have a least and a highest level.",
  },
  {
    terms: ["LNB"],
    meaning:
      "The unit on the dish arm. It amplifies what the dish collects and brings it down to frequencies for cable.",
  },
  {
    terms: ["LNB for C band", "LNB for Ka band"],
    meaning:
      "An LNB with one oscillator, for satellites at about 4 or 20 GHz. Each output switches the polarisation only; a tone changes nothing.",
  },
  {
    terms: ["LNB skew"],
    meaning: "How far the LNB is turned in its bracket, so that it fits the satellite’s polarisation.",
  },
  {
    terms: ["Loop resistance"],
    meaning: "Resistance of inner conductor and screen together. It decides how many volts a cable takes.",
  },
  {
    terms: ["Loop-out"],
    meaning:
      "An output of a receiver that leads its cable on to a second receiver. While the first is on, it alone commands the LNB.",
  },
  {
    terms: ["Loop-through outlet"],
    meaning: "Takes a little for its sockets and passes the line on to the next outlet.",
  },
  {
    terms: ["Low band", "High band"],
    meaning: "The lower and upper half of a satellite’s range. The 22 kHz tone asks for the high band.",
  },
  {
    terms: ["Margin"],
    meaning: "How much C/N there is above what is needed. Rain, age and other signals use it up.",
  },
  {
    terms: ["Masthead amplifier"],
    meaning: "Amplifies close to the aerial, before the cable weakens the signal. The cable feeds it.",
  },
  {
    terms: ["MER"],
    meaning:
      "What a digital meter shows for quality, in decibels: how far the carrier lies above all that disturbs it.",
  },
  {
    terms: ["Modulation"],
    meaning: "How a carrier holds its data, such as 64QAM. The more data it holds, the more C/N it needs.",
  },
  {
    terms: ["Multiswitch"],
    meaning: "Gives each of its outputs the quadrant that the receiver there asks for.",
  },
  {
    terms: ["Noise figure"],
    meaning:
      "How much noise a part adds, in decibels. The first amplifier behind aerial or dish counts most.",
  },
  {
    terms: ["Oscillator"],
    meaning:
      "A frequency made in the LNB. Subtracted from the satellite’s, it gives the frequency on the cable.",
  },
  {
    terms: ["Outlet"],
    meaning: "Where the installation ends in a room, with sockets for TV, radio or satellite.",
  },
  {
    terms: ["Pointing loss"],
    meaning: "What is lost because the dish does not look quite at the satellite.",
  },
  {
    terms: ["Polarisation"],
    meaning: "Vertical or horizontal. A satellite uses each frequency twice, once in each.",
  },
  {
    terms: ["Position command", "DiSEqC"],
    meaning: "A message by which a receiver asks for one of several satellites.",
  },
  {
    terms: ["Position switch"],
    meaning: "Connects a receiver to one of several LNBs, as its position command says.",
  },
  {
    terms: ["Power inserter"],
    meaning: "Puts a supply onto a cable that brings none, for a masthead amplifier or an LNB.",
  },
  {
    terms: ["Quad"],
    meaning: "A universal LNB with four switched outputs, one for each of four receivers. It is no quattro.",
  },
  {
    terms: ["Quadrant"],
    meaning: "A quarter of what a satellite sends: vertical or horizontal, low or high band.",
  },
  {
    terms: ["Quattro"],
    meaning: "An LNB with four fixed outputs, one for each quadrant. It feeds a multiswitch, not a receiver.",
  },
  {
    terms: ["Rated output"],
    meaning: "The highest level of each of two carriers at which an amplifier still works cleanly.",
  },
  {
    terms: ["Rejection"],
    meaning: "How much a filter weakens what it should not let through, in decibels.",
  },
  {
    terms: ["Return loss"],
    meaning: "How much weaker a reflection is than the signal, in decibels. At an open end it is zero.",
  },
  {
    terms: ["Ripple"],
    meaning: "Level that goes up and down with frequency, for instance by reflections from an open end.",
  },
  {
    terms: ["Riser"],
    meaning: "An upright line through a building, with outlets or taps on each floor.",
  },
  {
    terms: ["Satellite IF"],
    meaning: "Satellite signals as they travel on cable, usually between 950 and 2150 MHz.",
  },
  {
    terms: ["SCR", "dSCR"],
    meaning: "Single-cable reception by EN 50494 and EN 50607: several tuners share a cable by user bands.",
  },
  {
    terms: ["Slope"],
    meaning: "How far level falls or rises from one end of a range to the other. Cable weakens the top more.",
  },
  {
    terms: ["Splitter"],
    meaning: "Divides one line into several that are alike. Each gets less than half of the signal.",
  },
  {
    terms: ["Spread"],
    meaning: "How far values lie apart: levels of outlets, or real parts around their typical values.",
  },
  {
    terms: ["Switched output"],
    meaning: "Delivers one quadrant at a time, as its receiver asks. It cannot be shared by two receivers.",
  },
  {
    terms: ["Symbol rate"],
    meaning: "How many symbols a carrier sends in a second, in MBd. It decides how wide the carrier is.",
  },
  {
    terms: ["Tap"],
    meaning: "Takes a little off a line for one or more outlets and passes the rest on.",
  },
  {
    terms: ["Terminated outlet"],
    meaning: "The last outlet of a line: its own 75 Ω ends the line without reflections.",
  },
  {
    terms: ["Terminator"],
    meaning: "75 Ω for an open end, so that nothing is reflected there.",
  },
  {
    terms: ["Transponder"],
    meaning: "One carrier of a satellite. It usually holds several programmes.",
  },
  {
    terms: ["Trap"],
    meaning: "A filter for one channel that is too strong: it brings that channel down to the others.",
  },
  {
    terms: ["Trunk"],
    meaning: "The main line of a building, from which taps feed flats or floors.",
  },
  {
    terms: ["Tuner"],
    meaning:
      "The part of a receiver that picks one carrier. A receiver with two can record one and show another.",
  },
  {
    terms: ["Universal LNB"],
    meaning: "The usual LNB with switched outputs: each gives one receiver the quadrant that it asks for.",
  },
  {
    terms: ["User band"],
    meaning:
      "A numbered place on a single-cable line. Each tuner has its own and gets its transponder there.",
  },
  {
    terms: ["Wideband LNB"],
    meaning:
      "Sends a whole polarisation on each of two cables, from about 300 MHz. Only receivers made for it can use that.",
  },
] as const satisfies readonly GlossaryEntry[];

export type GlossaryTerm = (typeof GLOSSARY)[number]["terms"][0];

/** What somebody may look up who reads the explanation of a rule. */
const OF_RULES: Readonly<Record<RuleId, readonly GlossaryTerm[]>> = {
  "above-band-edge": ["Band edge"],
  "band-cut": ["Transponder"],
  "blocked-view": ["Azimuth"],
  "command-lost": ["22 kHz"],
  "dead-stub": ["Return loss"],
  "dwelling-isolation": ["Isolation"],
  intermodulation: ["Rated output"],
  "motor-line": ["22 kHz"],
  "level-difference": ["Level"],
  "level-limits": ["Level"],
  loop: ["Ripple"],
  "low-carrier-to-noise": ["C/N"],
  "many-alternatives": [],
  "no-supply": ["LNB"],
  "not-connected": [],
  "over-voltage": ["LNB"],
  "open-end": ["Return loss", "Ripple", "Terminator"],
  overload: ["Derating", "Rated output"],
  "plane-missing": ["Polarisation"],
  "receiver-misses": ["C/N"],
  "same-signal-twice": ["Ripple"],
  "shared-frequencies": ["C/I"],
  slope: ["Slope"],
  "stacking-input": ["Level", "User band"],
  "supply-overloaded": ["LNB"],
  "switched-output-shared": ["Quadrant", "Switched output"],
  "too-many-tuners": ["Tuner"],
  "tuner-blocked": ["Tuner"],
  "user-band-conflict": ["Tuner", "User band"],
  "wideband-shared": ["Diplexer", "Wideband LNB"],
  "wrong-feed": ["Oscillator", "Quadrant", "User band"],
  "wrong-quadrant": ["Quadrant", "Quattro"],
};

export function glossaryTermsOf(rule: RuleId): readonly GlossaryTerm[] {
  return OF_RULES[rule];
}
