/** The modulations that a row of limits speaks of: it names only how their keys begin. */

const SYSTEMS: readonly (readonly [prefix: string, name: string])[] = [
  ["dvbs2", "DVB-S2"],
  ["dvbs", "DVB-S"],
  ["dvbt2", "DVB-T2"],
  ["dvbt", "DVB-T"],
  ["dvbc", "DVB-C"],
  ["fm", "FM"],
];

/** "dvbt2-64qam" → "DVB-T2, 64QAM"; "" → "any", or "any other" where the service has further rows. */
export function modeWords(prefix: string, hasOthers: boolean): string {
  if (prefix === "") return hasOthers ? "any other" : "any";
  const [system = "", ...rest] = prefix.split("-");
  const name = SYSTEMS.find(([key]) => key === system)?.[1] ?? system.toUpperCase();
  const detail = rest.join(" ").trim();
  if (detail === "") return name;
  return system === "fm" ? `${name}, ${detail}` : `${name}, ${detail.toUpperCase()}`;
}
