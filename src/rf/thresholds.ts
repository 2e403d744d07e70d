/** The C/N that each modulation needs at the receiver's input: below it, no picture and no sound. */

export type Mode = {
  readonly name: string;
  /** Least C/N [dB], in the carrier's noise bandwidth (symbol rate, or occupied width). */
  readonly requiredCnDb: number;
  /** Where the number comes from. */
  readonly source: string;
};

const DVB_S = "NorDig Unified 2.2, receiver requirement, as quoted in a public table";
const DVB_S2 =
  "EN 302 307-1 Table 13 (ideal Es/N0), as quoted in a public table, plus 1.0 dB for a real receiver";
const DVB_T = "NorDig Unified 2.2, practical receiver in a Gaussian channel, as quoted in a public table";
const DVB_C =
  "NorDig Unified, receiver requirement for DVB-C, as quoted in a public table; in the bandwidth of the symbol rate";
const DVB_T2 =
  "Practical receiver, 64k LDPC, sparse pilots not credited; public table of receiver requirements";

/** What a real DVB-S2 receiver needs beyond the ideal demodulator [dB]; 0.8 to 1.5 is usual. */
const DVB_S2_RECEIVER_DB = 1;

function dvbS2(name: string, idealEsN0Db: number): Mode {
  return { name: `DVB-S2 ${name}`, requiredCnDb: idealEsN0Db + DVB_S2_RECEIVER_DB, source: DVB_S2 };
}

export const MODES = {
  "dvbs-qpsk-1/2": { name: "DVB-S QPSK 1/2", requiredCnDb: 3.8, source: DVB_S },
  "dvbs-qpsk-2/3": { name: "DVB-S QPSK 2/3", requiredCnDb: 5.6, source: DVB_S },
  "dvbs-qpsk-3/4": { name: "DVB-S QPSK 3/4", requiredCnDb: 6.7, source: DVB_S },
  "dvbs-qpsk-5/6": { name: "DVB-S QPSK 5/6", requiredCnDb: 7.7, source: DVB_S },
  "dvbs-qpsk-7/8": { name: "DVB-S QPSK 7/8", requiredCnDb: 8.4, source: DVB_S },
  "dvbs2-qpsk-1/4": dvbS2("QPSK 1/4", -2.35),
  "dvbs2-qpsk-1/3": dvbS2("QPSK 1/3", -1.24),
  "dvbs2-qpsk-2/5": dvbS2("QPSK 2/5", -0.3),
  "dvbs2-qpsk-1/2": dvbS2("QPSK 1/2", 1.0),
  "dvbs2-qpsk-3/5": dvbS2("QPSK 3/5", 2.23),
  "dvbs2-qpsk-2/3": dvbS2("QPSK 2/3", 3.1),
  "dvbs2-qpsk-3/4": dvbS2("QPSK 3/4", 4.03),
  "dvbs2-qpsk-4/5": dvbS2("QPSK 4/5", 4.68),
  "dvbs2-qpsk-5/6": dvbS2("QPSK 5/6", 5.18),
  "dvbs2-qpsk-8/9": dvbS2("QPSK 8/9", 6.2),
  "dvbs2-qpsk-9/10": dvbS2("QPSK 9/10", 6.42),
  "dvbs2-8psk-3/5": dvbS2("8PSK 3/5", 5.5),
  "dvbs2-8psk-2/3": dvbS2("8PSK 2/3", 6.62),
  "dvbs2-8psk-3/4": dvbS2("8PSK 3/4", 7.91),
  "dvbs2-8psk-5/6": dvbS2("8PSK 5/6", 9.35),
  "dvbs2-8psk-8/9": dvbS2("8PSK 8/9", 10.69),
  "dvbs2-8psk-9/10": dvbS2("8PSK 9/10", 10.98),
  "dvbs2-16apsk-2/3": dvbS2("16APSK 2/3", 8.97),
  "dvbs2-16apsk-3/4": dvbS2("16APSK 3/4", 10.21),
  "dvbs2-16apsk-4/5": dvbS2("16APSK 4/5", 11.03),
  "dvbs2-16apsk-5/6": dvbS2("16APSK 5/6", 11.61),
  "dvbs2-16apsk-8/9": dvbS2("16APSK 8/9", 12.89),
  "dvbs2-16apsk-9/10": dvbS2("16APSK 9/10", 13.13),
  "dvbs2-32apsk-3/4": dvbS2("32APSK 3/4", 12.73),
  "dvbs2-32apsk-4/5": dvbS2("32APSK 4/5", 13.64),
  "dvbs2-32apsk-5/6": dvbS2("32APSK 5/6", 14.28),
  "dvbs2-32apsk-8/9": dvbS2("32APSK 8/9", 15.69),
  "dvbs2-32apsk-9/10": dvbS2("32APSK 9/10", 16.05),
  "dvbt-qpsk-1/2": { name: "DVB-T QPSK 1/2", requiredCnDb: 5.1, source: DVB_T },
  "dvbt-qpsk-2/3": { name: "DVB-T QPSK 2/3", requiredCnDb: 6.9, source: DVB_T },
  "dvbt-qpsk-3/4": { name: "DVB-T QPSK 3/4", requiredCnDb: 7.9, source: DVB_T },
  "dvbt-qpsk-5/6": { name: "DVB-T QPSK 5/6", requiredCnDb: 8.9, source: DVB_T },
  "dvbt-qpsk-7/8": { name: "DVB-T QPSK 7/8", requiredCnDb: 9.7, source: DVB_T },
  "dvbt-16qam-1/2": { name: "DVB-T 16QAM 1/2", requiredCnDb: 10.8, source: DVB_T },
  "dvbt-16qam-2/3": { name: "DVB-T 16QAM 2/3", requiredCnDb: 13.1, source: DVB_T },
  "dvbt-16qam-3/4": { name: "DVB-T 16QAM 3/4", requiredCnDb: 14.6, source: DVB_T },
  "dvbt-16qam-5/6": { name: "DVB-T 16QAM 5/6", requiredCnDb: 15.6, source: DVB_T },
  "dvbt-16qam-7/8": { name: "DVB-T 16QAM 7/8", requiredCnDb: 16.0, source: DVB_T },
  "dvbt-64qam-1/2": { name: "DVB-T 64QAM 1/2", requiredCnDb: 16.5, source: DVB_T },
  "dvbt-64qam-2/3": { name: "DVB-T 64QAM 2/3", requiredCnDb: 18.7, source: DVB_T },
  "dvbt-64qam-3/4": { name: "DVB-T 64QAM 3/4", requiredCnDb: 20.2, source: DVB_T },
  "dvbt-64qam-5/6": { name: "DVB-T 64QAM 5/6", requiredCnDb: 21.6, source: DVB_T },
  "dvbt-64qam-7/8": { name: "DVB-T 64QAM 7/8", requiredCnDb: 22.5, source: DVB_T },
  "dvbt2-qpsk-1/2": { name: "DVB-T2 QPSK 1/2", requiredCnDb: 3.5, source: DVB_T2 },
  "dvbt2-qpsk-3/5": { name: "DVB-T2 QPSK 3/5", requiredCnDb: 4.7, source: DVB_T2 },
  "dvbt2-qpsk-2/3": { name: "DVB-T2 QPSK 2/3", requiredCnDb: 5.6, source: DVB_T2 },
  "dvbt2-qpsk-3/4": { name: "DVB-T2 QPSK 3/4", requiredCnDb: 6.6, source: DVB_T2 },
  "dvbt2-qpsk-4/5": { name: "DVB-T2 QPSK 4/5", requiredCnDb: 7.2, source: DVB_T2 },
  "dvbt2-qpsk-5/6": { name: "DVB-T2 QPSK 5/6", requiredCnDb: 7.7, source: DVB_T2 },
  "dvbt2-16qam-1/2": { name: "DVB-T2 16QAM 1/2", requiredCnDb: 8.7, source: DVB_T2 },
  "dvbt2-16qam-3/5": { name: "DVB-T2 16QAM 3/5", requiredCnDb: 10.1, source: DVB_T2 },
  "dvbt2-16qam-2/3": { name: "DVB-T2 16QAM 2/3", requiredCnDb: 11.4, source: DVB_T2 },
  "dvbt2-16qam-3/4": { name: "DVB-T2 16QAM 3/4", requiredCnDb: 12.5, source: DVB_T2 },
  "dvbt2-16qam-4/5": { name: "DVB-T2 16QAM 4/5", requiredCnDb: 13.3, source: DVB_T2 },
  "dvbt2-16qam-5/6": { name: "DVB-T2 16QAM 5/6", requiredCnDb: 13.8, source: DVB_T2 },
  "dvbt2-64qam-1/2": { name: "DVB-T2 64QAM 1/2", requiredCnDb: 13.0, source: DVB_T2 },
  "dvbt2-64qam-3/5": { name: "DVB-T2 64QAM 3/5", requiredCnDb: 14.8, source: DVB_T2 },
  "dvbt2-64qam-2/3": { name: "DVB-T2 64QAM 2/3", requiredCnDb: 16.2, source: DVB_T2 },
  "dvbt2-64qam-3/4": { name: "DVB-T2 64QAM 3/4", requiredCnDb: 17.7, source: DVB_T2 },
  "dvbt2-64qam-4/5": { name: "DVB-T2 64QAM 4/5", requiredCnDb: 18.7, source: DVB_T2 },
  "dvbt2-64qam-5/6": { name: "DVB-T2 64QAM 5/6", requiredCnDb: 19.4, source: DVB_T2 },
  "dvbt2-256qam-1/2": { name: "DVB-T2 256QAM 1/2", requiredCnDb: 17.0, source: DVB_T2 },
  "dvbt2-256qam-3/5": { name: "DVB-T2 256QAM 3/5", requiredCnDb: 19.4, source: DVB_T2 },
  "dvbt2-256qam-2/3": { name: "DVB-T2 256QAM 2/3", requiredCnDb: 20.8, source: DVB_T2 },
  "dvbt2-256qam-3/4": { name: "DVB-T2 256QAM 3/4", requiredCnDb: 22.9, source: DVB_T2 },
  "dvbt2-256qam-4/5": { name: "DVB-T2 256QAM 4/5", requiredCnDb: 24.3, source: DVB_T2 },
  "dvbt2-256qam-5/6": { name: "DVB-T2 256QAM 5/6", requiredCnDb: 25.1, source: DVB_T2 },
  "dvbc-16qam": { name: "DVB-C 16QAM", requiredCnDb: 20, source: DVB_C },
  "dvbc-32qam": { name: "DVB-C 32QAM", requiredCnDb: 23, source: DVB_C },
  "dvbc-64qam": { name: "DVB-C 64QAM", requiredCnDb: 26, source: DVB_C },
  "dvbc-128qam": { name: "DVB-C 128QAM", requiredCnDb: 29, source: DVB_C },
  "dvbc-256qam": { name: "DVB-C 256QAM", requiredCnDb: 32, source: DVB_C },
  dab: {
    name: "DAB / DAB+",
    requiredCnDb: 8,
    source: "DQPSK, protection 3-A, Gaussian channel, from memory (on the move 11 to 15 dB)",
  },
  "fm-stereo": {
    name: "FM stereo",
    requiredCnDb: 38,
    source: "Spanish Royal Decree 346/2011, Annex I 4.5: C/N at the outlet for clean FM",
  },
  "fm-mono": { name: "FM mono", requiredCnDb: 12, source: "FM threshold, about 10 to 12 dB, from memory" },
  mobile: {
    name: "Mobile phone (LTE)",
    requiredCnDb: 0,
    source: "QPSK at the cell edge, from memory; nobody receives it from a TV cable",
  },
  dect: {
    name: "DECT",
    requiredCnDb: 10,
    source: "Co-channel ratio of a GFSK receiver, from memory; nobody receives it from a TV cable",
  },
} as const satisfies Readonly<Record<string, Mode>>;

export type ModeKey = keyof typeof MODES;

export function isModeKey(mode: string): mode is ModeKey {
  return Object.hasOwn(MODES, mode);
}

/** Every key of `MODES`, in the order of the table. */
export const MODE_KEYS: readonly ModeKey[] = Object.keys(MODES).filter(isModeKey);

/** The hardest requirement of the table [dB]. */
const STRICTEST_DB = Math.max(...MODE_KEYS.map((key) => MODES[key].requiredCnDb));

/**
 * C/N that a mode needs [dB].
 * A mode that the table does not know is held to the strictest requirement of all: it may be
 * called bad by mistake, but never good.
 */
export function requiredCnDb(mode: string): number {
  return isModeKey(mode) ? MODES[mode].requiredCnDb : STRICTEST_DB;
}
