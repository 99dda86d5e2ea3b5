// Writes src/picture/advances.generated.ts: the widths of the letters that drawings may carry, taken from
// the embedded fonts, so that the size of a text is known before any output is made. To run it:
//   npx rolldown test/tools/advances.ts --platform node --external fontkit --file out/advances.mjs
//   node out/advances.mjs src/picture/advances.generated.ts
import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { create, type Font } from "fontkit";

/** First and last code points of what drawings may carry; a letter that either font lacks is left out. */
const BLOCKS: readonly (readonly [first: number, last: number, name: string])[] = [
  [0x0020, 0x007e, "Basic Latin"],
  [0x00a0, 0x00ac, "Latin-1, up to the soft hyphen"],
  [0x00ae, 0x02af, "Latin-1, Latin Extended A and B, IPA"],
  [0x02b0, 0x034e, "spacing modifiers, combining marks, up to the grapheme joiner"],
  [0x0350, 0x036f, "combining marks"],
  [0x0370, 0x052f, "Greek, Cyrillic and its supplement"],
  [0x0531, 0x058a, "Armenian"],
  [0x10a0, 0x10ff, "Georgian"],
  [0x1e00, 0x1fff, "Latin Extended Additional, Greek Extended"],
  [0x2000, 0x200a, "spaces"],
  [0x2010, 0x2027, "dashes, quotation marks, bullets"],
  [0x202f, 0x205f, "per mille, primes, fraction slash and the like"],
  [0x2070, 0x20cf, "raised and lowered figures, currencies"],
  [0x2100, 0x22ff, "letter-like signs, fractions, arrows, mathematics"],
  [0x25a0, 0x25ff, "geometric shapes"],
  [0x2610, 0x2612, "boxes to tick"],
  [0x2713, 0x2718, "ticks and crosses"],
  [0x2c60, 0x2c7f, "Latin Extended C"],
  [0xfb00, 0xfb06, "Latin ligatures"],
];

const hex = (codePoint: number): string => `0x${codePoint.toString(16).padStart(4, "0")}`;

/** Unbroken runs of code points that both fonts have. */
function runsOf(fonts: readonly Font[]): readonly (readonly number[])[] {
  const runs: number[][] = [];
  for (const [first, last] of BLOCKS) {
    for (let c = first; c <= last; c += 1) {
      if (!fonts.every((f) => f.hasGlyphForCodePoint(c))) continue;
      const run = runs.at(-1);
      if (run?.at(-1) === c - 1) run.push(c);
      else runs.push([c]);
    }
  }
  return runs;
}

/** The generated file's text, from the bytes of the regular and the bold font. */
export function advancesModule(regular: Uint8Array, bold: Uint8Array): string {
  const fonts = [create(regular), create(bold)];
  const [plain, heavy] = fonts as [Font, Font];
  const same = (of: (f: Font) => number): number => {
    if (of(plain) !== of(heavy)) throw new Error("advances: the two fonts differ in their vertical measures");
    return of(plain);
  };
  const runs = runsOf(fonts);
  const all = runs.flat();
  const inks = all.flatMap((c) => fonts.map((f) => ({ c, ink: f.glyphForCodePoint(c).bbox })));
  const above = (c: number): boolean => fonts.some((f) => f.glyphForCodePoint(c).bbox.maxY > f.ascent);
  const below = (c: number): boolean => fonts.some((f) => f.glyphForCodePoint(c).bbox.minY < f.descent);
  const list = (test: (c: number) => boolean): string => all.filter(test).map(hex).join(", ");
  const widths = (f: Font, run: readonly number[]): string =>
    JSON.stringify(run.map((c) => f.glyphForCodePoint(c).advanceWidth).join(" "));
  return `${[
    `// Written by test/tools/advances.ts from ${plain.fullName} and ${heavy.fullName}, ${plain.version}; not edited by hand.`,
    "// All measures in font units.",
    `export const UNITS_PER_EM = ${same((f) => f.unitsPerEm)};`,
    `export const ASCENT = ${same((f) => f.ascent)};`,
    `export const DESCENT = ${-same((f) => f.descent)};`,
    "/** Height of H. */",
    `export const CAP_HEIGHT = ${same((f) => f.glyphForCodePoint(0x48).bbox.maxY)};`,
    "/** Ink of the tallest and of the deepest letter in the table. */",
    `export const TALLEST = ${Math.max(...inks.map((i) => i.ink.maxY))};`,
    `export const DEEPEST = ${-Math.min(...inks.map((i) => i.ink.minY))};`,
    "/** Code points with ink above the ascent. */",
    `export const TALL: readonly number[] = [${list(above)}];`,
    "/** Code points with ink below the descent. */",
    `export const DEEP: readonly number[] = [${list(below)}];`,
    "/** Runs of code points: the first, then the widths in the regular and in the bold font. */",
    "export const ADVANCES: readonly (readonly [first: number, regular: string, bold: string])[] = [",
    ...runs.map((run) => `  [${hex(run[0]!)}, ${widths(plain, run)}, ${widths(heavy, run)}],`),
    "];",
  ].join("\n")}\n`;
}

const fontBytes = (name: string): Uint8Array =>
  readFileSync(fileURLToPath(import.meta.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`)));

if (process.argv[2] !== undefined && process.argv[1]?.includes("advances")) {
  writeFileSync(
    process.argv[2],
    advancesModule(fontBytes("DejaVuSansCondensed"), fontBytes("DejaVuSansCondensed-Bold")),
  );
}
