/** Diodes that steer direct current: what they take, whatever the current. */

/**
 * Schottky diode, as splitters, taps and plates have one [V]: 0.3 to 0.5 V at some hundred milliamperes; textbook value,
 * from memory.
 */
export const SCHOTTKY_DROP_VOLTS = 0.5;

/** Silicon diode, as multiswitches that live on their receivers have one [V]: 0.7 to 0.9 V; textbook value, from memory. */
export const SILICON_DROP_VOLTS = 0.7;
