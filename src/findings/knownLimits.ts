/** Where the model knows less than the world: one list for the help and for whoever judges a result. */

export type KnownLimit = { readonly title: string; readonly text: string };

export const KNOWN_LIMITS: readonly KnownLimit[] = [
  {
    title: "Typical values are typical",
    text: "Gains, losses and noise figures are typical ones until you put in those of your parts. A real installation has a spread of some decibels about them.",
  },
  {
    title: "Reflections and echoes",
    text: "Return losses and open ends make ripple, counted in the margin and drawn around the level by its size, never by its phase. Levels themselves are those of matched ports. Where one signal comes by two ways, the powers are added and a finding says so. How deep they cancel follows from their levels; at which frequencies is not calculated.",
  },
  {
    title: "Dead ends on a joint",
    text: "What a dead cable on a T joint takes is in the levels behind it, as the mean over each carrier. Its length is taken to be known to 5 %: the level’s range follows from that. Two dead ends behind each other act one by one.",
  },
  {
    title: "Order and timing of commands",
    text: "The model knows who asks for what, not when. Messages sent at the same instant, their repetition, and switching times are not calculated.",
  },
  {
    title: "Flat inside a channel",
    text: "Each carrier has one level. Ripple inside a channel or a user band is not modelled. Nor is the ripple of an LNB over its band, ±2 to 4 dB.",
  },
  {
    title: "Leakage between signals",
    text: "What leaks from the other polarisation, from other inputs of a switch and from neighbouring satellites counts as noise, by its power. A strip shows it only where it takes the carrier. At an unlucky phase it can cost some decibels more. Neighbours are taken to use every frequency.",
  },
  {
    title: "Screening and ingress",
    text: "What a mast or a cordless phone near by leaves on a cable follows from the settings and the screening class. A half-wave dipole stands for the cable. How the cable lies does not count. Filters, switches, combiners and channel amplifiers count as closed; of an amplifier’s several inputs one lets in. Nothing gets out. The part “Ingress” puts in what you measured.",
  },
  {
    title: "Many receivers on one supply",
    text: "Supply is calculated as it is now, for each receiver on alone, and for all of them asking for vertical. Combinations of who is on are listed for six receivers at most. Beyond 24 on one network, other requests are tried by all at once. So are those beyond 512 requests and switch positions, or fewer on a very large network.",
  },
  {
    title: "Cable of copper-clad steel",
    text: "The higher resistance for the supply is calculated. The extra loss below about 50 MHz, where current flows in the steel, is not.",
  },
  {
    title: "Offsets of UHF channels",
    text: "A channel sits at the centre of its raster. Offsets by a sixth or an eighth of a megahertz are not modelled.",
  },
  {
    title: "Bands and rasters",
    text: "LNBs of C band and Ka band give one polarisation at a time. 5G phone masts beside C band, and what the ionosphere turns there, are not calculated. TV is DVB-T, DVB-T2 and DVB-C in channels of 8, 7 or 6 MHz, from 174 MHz on air; other systems are missing. Cable channels count with the usual symbol rate of their width.",
  },
  {
    title: "Overdriven amplifiers",
    text: "Third-order products follow the cubic law: two decibels worse for each decibel of drive. Behind each other they add in step, or by power, as the settings say. The output is compressed smoothly by its mean power; peaks are not followed. They count alike in every channel, though those of phone masts fall mostly beside the masts: there the verdict is on the safe side. Beyond 20 dB over the rating nothing is received. Second-order products are not modelled.",
  },
  {
    title: "Isolation between flats",
    text: "Isolation is calculated across the outputs of the part at which two ways meet, and down both ways. Amplifiers let nothing back. What couples through a common input, or by radiation, is left out.",
  },
  {
    title: "Head ends and IP servers",
    text: "What leaves a head end does not follow from what comes in. Draw its satellite inputs as satellite receivers and its outputs as modulators, or as a cable hand-over point. Draw an IP server as receivers with the same feed and tuners. Networks of data are not calculated.",
  },
  {
    title: "Optical fibre",
    text: "Optical LNBs and their receiving units are missing. Draw the LNB without its fibre, and set its gain to what the data sheet of the unit says.",
  },
  {
    title: "Return path and cable modems",
    text: "Signals run from the aerial or the network to the receivers. What a modem sends back is not calculated, and amplifiers with a return path are drawn without it. Draw a data outlet as a plain TV outlet.",
  },
  {
    title: "Directions",
    text: "Aerials have one pattern for all frequencies, upright and across alike. Level at another bearing follows from it alone; buildings and reflections near the aerial are not known.",
  },
  {
    title: "Quality on air",
    text: "Terrestrial signals count as clean on air. Real ones arrive with echoes and the transmitter’s own errors: a meter shows an MER of about 28 to 35 dB where C/N is higher. At the limit this costs a receiver less than one decibel.",
  },
  {
    title: "Rain and lifts",
    text: "Rain takes from each transponder by its frequency, polarisation and elevation. Neighbouring satellites fall with it; products of amplifiers and what gets in from outside are taken to stay. A lift raises all distant transmitters alike; which of them a given weather brings is not known. Conditions are tried one at a time.",
  },
  {
    title: "Receivers",
    text: "A receiver needs the C/N of its modulation behind its tuner’s noise. What blocks a tuner is a typical ratio or power, and its automatic gain control is not followed. Neighbouring transponders do not block each other. Which channel carries which programme is not known, so carriers are counted.",
  },
];
