/** Where the model knows less than the world: one list for the help and for whoever judges a result. */

export type KnownLimit = { readonly title: string; readonly text: string };

export const KNOWN_LIMITS: readonly KnownLimit[] = [
  {
    title: "Typical values are typical",
    text: "Gains, losses and noise figures are typical ones until you put in those of your parts. A real installation scatters by some decibels about them.",
  },
  {
    title: "Reflections and echoes",
    text: "Every port is taken as matched. Return loss, reflections from open or badly made ends, and the ripple they cause are not computed; where ends are open it only says so. Where one signal comes by two ways, their powers are added and a finding says that they meet; at which frequencies they cancel is not computed.",
  },
  {
    title: "Order and timing of commands",
    text: "It knows who asks for what, not when. Receivers that speak at the same instant, collisions of messages on a shared cable and their repetition, and switching times are not computed.",
  },
  {
    title: "Flat inside a channel",
    text: "Each carrier has one level. Ripple inside a channel or a user band, and the ripple of ±2 to 4 dB of an LNB over its band, are not modelled.",
  },
  {
    title: "Leakage between polarisations",
    text: "Dish and LNB keep vertical and horizontal apart completely. A badly turned LNB, and the 20 to 25 dB between polarisations of a real one, are not modelled.",
  },
  {
    title: "Screening and pick-up",
    text: "Nothing gets into a cable or out of it. Put a pick-up part where you suspect a mobile mast or a cordless phone.",
  },
  {
    title: "Cable of copper-clad steel",
    text: "Its resistance for the supply is reckoned with; its extra loss below about 50 MHz, where current flows in the steel, is not.",
  },
  {
    title: "Offsets of UHF channels",
    text: "A channel sits at the centre of its raster. Offsets by a sixth of a megahertz are not modelled.",
  },
  {
    title: "Overdriven amplifiers",
    text: "Third-order products follow the cubic law, two decibels worse for each decibel of drive, until only products come out; at the end the output saturates some decibels below the third-order intercept. Second-order products are not modelled.",
  },
  {
    title: "Isolation between dwellings",
    text: "Reckoned across the outputs of the part at which two ways meet, and down both ways. What couples through a common input, or by radiation, is left out.",
  },
  {
    title: "Receivers",
    text: "A receiver needs the C/N of its modulation behind a tuner of 8 dB noise figure. A real one may be some decibels better or worse. Which channel carries which programme is not known; carriers are counted.",
  },
];
