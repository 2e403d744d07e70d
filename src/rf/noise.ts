/** Thermal noise, noise figures and noise temperatures. Noise travels as a linear power, so that it adds. */
import { dbToRatio, IMPEDANCE_OHM, ratioToDb } from "./decibel.ts";

/** Boltzmann's constant [J/K], exact by definition of the SI. */
export const BOLTZMANN = 1.380649e-23;

/** Reference temperature of noise figures [K] (IEEE definition). */
export const REFERENCE_KELVIN = 290;

/**
 * Thermal noise k·T·B of a matched source [(µV)² into 75 Ω, linear].
 * 8 MHz at 290 K give 2.4 (µV)², that is 3.8 dBµV: no receiver sees less in a TV channel.
 * u² = k·T·B·75 Ω
 */
export function thermalNoiseUv2(bandwidthMHz: number, kelvin: number = REFERENCE_KELVIN): number {
  return BOLTZMANN * kelvin * bandwidthMHz * 1e6 * IMPEDANCE_OHM * 1e12;
}

/**
 * Noise factor F from the noise figure [dB]; 1 is noiseless.
 * A passive part of loss L at 290 K has F = L. A part adds (F − 1)·k·T₀·B at its input;
 * Friis' formula for a chain follows from adding these powers.
 */
export function noiseFactor(noiseFigureDb: number): number {
  return dbToRatio(noiseFigureDb);
}

/** Noise figure [dB] of an equivalent noise temperature [K]: 10·log10(1 + T/290). */
export function kelvinToNoiseFigureDb(kelvin: number): number {
  return ratioToDb(1 + kelvin / REFERENCE_KELVIN);
}

/** Equivalent noise temperature [K] of a noise figure [dB]: 290·(F − 1). */
export function noiseFigureDbToKelvin(noiseFigureDb: number): number {
  return REFERENCE_KELVIN * (noiseFactor(noiseFigureDb) - 1);
}
