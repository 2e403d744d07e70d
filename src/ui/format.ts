/** Numbers as the panes print them: a true minus sign, thin spaces in long frequencies, units apart. */

/** A number with a fixed count of decimals; −0 reads 0, nothing reads "–". */
export function decimal(value: number | undefined, digits = 1): string {
  if (value === undefined || !Number.isFinite(value)) return "–";
  const text = Math.abs(value).toFixed(digits);
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}

/** A number that always shows its sign: "+24.0", "−4.1"; 0 has none. */
export function signed(value: number | undefined, digits = 1): string {
  const text = decimal(value, digits);
  return value !== undefined && value > 0 && Number(text) !== 0 ? `+${text}` : text;
}

/** A frequency [MHz] with as many decimals as it needs, at most three: 474, 225.648, 11 778. */
export function megahertz(mhz: number | undefined): string {
  if (mhz === undefined || !Number.isFinite(mhz)) return "–";
  const [whole = "", part] = String(Math.round(Math.abs(mhz) * 1000) / 1000).split(".");
  const grouped = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, "\u202f") : whole;
  return (mhz < 0 ? "−" : "") + grouped + (part ? `.${part}` : "");
}

/** "62–71 dBµV", "62 dBµV" when both ends read alike, "–" for nothing. */
export function levelRange(min: number | undefined, max: number | undefined, unit = "dBµV"): string {
  if (min === undefined || max === undefined || !Number.isFinite(min) || !Number.isFinite(max)) return "–";
  const low = decimal(min, 0);
  const high = decimal(max, 0);
  return low === high ? `${low} ${unit}` : `${low}–${high} ${unit}`;
}

/** "1 part", "3 parts". */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
