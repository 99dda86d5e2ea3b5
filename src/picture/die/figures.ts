// How sizes are written on a die's drawing.
import type { Units } from "../../model/say.ts";
import { MM_PER_INCH, printNumber } from "../../units/index.ts";

/** Decimals on a drawing: a hundredth of a millimetre, a thousandth of an inch. */
const MM_DECIMALS = 2;
const INCH_DECIMALS = 3;

/** A tie goes away from 0, so that what lies alike on both sides of the datum reads alike: -0.313 and 0.313. */
export function printAlike(n: number, decimals: number): string {
  const text = printNumber(Math.abs(n), decimals);
  return n < 0 && text !== "0" ? `-${text}` : text;
}

const inMm = (mm: number): string => printAlike(mm, MM_DECIMALS);
const inInches = (mm: number): string => printAlike(mm / MM_PER_INCH, INCH_DECIMALS);

/** A size in both units, the other one in square brackets: `25.4 [1]`; with inches first `1 [25.4]`. */
export const bothUnits = (mm: number, units: Units): string =>
  units === "in" ? `${inInches(mm)} [${inMm(mm)}]` : `${inMm(mm)} [${inInches(mm)}]`;

/** The same with the units' names, for running text: `25.4 mm [1 in]`. */
export const sayBoth = (mm: number, units: Units): string =>
  units === "in" ? `${inInches(mm)} in [${inMm(mm)} mm]` : `${inMm(mm)} mm [${inInches(mm)} in]`;

/** An auxiliary size, which follows from the tables: round brackets (ISO 129-1, from memory). */
export const auxiliary = (mm: number, units: Units): string => `(${bothUnits(mm, units)})`;

/** Which unit stands where. */
export const sayUnits = (units: Units): string =>
  units === "in" ? "inches, millimetres in [ ]" : "millimetres, inches in [ ]";

/** `1 : 2`; of a sheet that is drawn so many times smaller. */
export const sayScale = (reduced: number): string => `1 : ${printNumber(reduced, 0)}`;

type Named = { readonly letters: string; readonly number: number };

function split(letter: string): Named {
  const letters = letter.replace(/\d+$/, "");
  return { letters, number: Number(letter.slice(letters.length)) };
}

/** Letters in few words, in order: `A1 to A3, B2`. */
export function sayLetters(all: readonly string[]): string {
  const runs: { first: Named; last: Named }[] = [];
  for (const { letters, number } of all.map(split).sort(byLetter)) {
    const open = runs.at(-1);
    if (open && open.last.letters === letters && open.last.number + 1 === number)
      open.last = { letters, number };
    else runs.push({ first: { letters, number }, last: { letters, number } });
  }
  const word = ({ letters, number }: Named): string => `${letters}${number}`;
  const say = ({ first, last }: (typeof runs)[number]): string => {
    if (first.number === last.number) return word(first);
    return `${word(first)}${last.number === first.number + 1 ? ", " : " to "}${word(last)}`;
  };
  return runs.map(say).join(", ");
}

/** A before B, Z before AA, 2 before 10. */
function byLetter(a: Named, b: Named): number {
  if (a.letters.length !== b.letters.length) return a.letters.length - b.letters.length;
  if (a.letters !== b.letters) return a.letters < b.letters ? -1 : 1;
  return a.number - b.number;
}
