/**
 * How much room words take in the shipped typeface, and how a name is made to fit: worked out by arithmetic, since
 * cards have their sizes before anything is drawn.
 */

/** Advance widths in shares of the type size, semi-bold; by classes of letters, a little on the generous side. */
const NARROW = /[iljtfrI1.,:;'’|!()[\]·/ \u00A0-]/;
const WIDE = /[mwMW@%—…]/;
const CAPITAL = /[A-HJ-LN-VX-ZÄÖÜ]/;
const SHARES = { narrow: 0.36, wide: 0.9, capital: 0.7, other: 0.6 } as const;

/** Width of a text [px] at a type size [px]. */
export function textWidth(text: string, sizePx: number): number {
  let shares = 0;
  for (const letter of text) {
    if (NARROW.test(letter)) shares += SHARES.narrow;
    else if (WIDE.test(letter)) shares += SHARES.wide;
    else if (CAPITAL.test(letter)) shares += SHARES.capital;
    else shares += SHARES.other;
  }
  return shares * sizePx;
}

type Room = { readonly widthPx: number; readonly sizePx: number };

/** A text broken into lines between words; a word longer than a line is broken inside. */
export function brokenLines(text: string, { widthPx, sizePx }: Room): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (textWidth(longer, sizePx) <= widthPx) {
      line = longer;
      continue;
    }
    if (line !== "") lines.push(line);
    line = "";
    for (const letter of word) {
      if (line !== "" && textWidth(line + letter, sizePx) > widthPx) {
        lines.push(line);
        line = "";
      }
      line += letter;
    }
  }
  return [...lines, line];
}

/** Lines that a text takes. */
export function linesOf(text: string, room: Room): number {
  return brokenLines(text, room).length;
}

/**
 * A name that fits into so many lines. What is too long loses its middle, whole words where that helps: names mostly
 * begin with what a thing is and end with where it is ("Satellite… flat 12").
 */
export function fittingName(name: string, lines: number, room: Room): string {
  return withNumberKept(shortened(name, lines, room), lines, room);
}

/** A number at the end goes to the next line with the word before it: "bedroom 2", never a bare "2". */
function withNumberKept(name: string, lines: number, room: Room): string {
  if (linesOf(name, room) === 1) return name;
  const kept = name.replace(/ (\d{1,4}\w?)$/, "\u00A0$1");
  const end = kept.slice(kept.lastIndexOf(" ") + 1);
  return textWidth(end, room.sizePx) <= room.widthPx && linesOf(kept, room) <= lines ? kept : name;
}

function shortened(name: string, lines: number, room: Room): string {
  const fits = (text: string) => linesOf(text, room) <= lines;
  if (fits(name)) return name;
  const words = name.split(" ");
  const head = [...(words[0] ?? "")];
  // Two words at the end mostly say where it is ("living room", "flat 12"): they outlive the rest of the first word.
  for (const tail of [2, 1]) {
    if (words.length <= tail) continue;
    const end = words.slice(-tail).join(" ");
    for (let kept = words.length - tail - 1; kept >= 1; kept--) {
      const short = `${words.slice(0, kept).join(" ")}… ${end}`;
      if (fits(short)) return short;
    }
    for (let kept = head.length - 1; kept >= 2; kept--) {
      const short = `${head.slice(0, kept).join("")}… ${end}`;
      if (fits(short)) return short;
    }
  }
  const letters = [...name];
  for (let kept = letters.length - 1; kept > 4; kept--) {
    const head = Math.floor(kept / 2);
    const short = `${letters.slice(0, head).join("")}…${letters.slice(letters.length - (kept - head)).join("")}`;
    if (fits(short)) return short;
  }
  return `${letters.slice(0, 3).join("")}…`;
}
