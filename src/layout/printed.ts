import type { Paper, PrinterFactor } from "../model/sheet.ts";
import { printNumber, readLength } from "../units/index.ts";
import { barLengths, factorFrom } from "./printer.ts";

export type PrintedRead =
  | { readonly ok: true; readonly factor: PrinterFactor }
  | { readonly ok: false; readonly problem: string; readonly allowed: string; readonly mend: string };

/** What the bars measured, in the unit that was most likely meant, or the other way round. */
function slipOf(parts: readonly string[], fits: (texts: readonly string[]) => boolean): string | undefined {
  const swapped = [...parts].reverse();
  const inInches = (texts: readonly string[]): readonly string[] => texts.map((t) => `${t} in`);
  if (fits(swapped)) {
    const between = /[a-z"″”]/i.test(swapped.join("")) ? " x " : "x";
    return `short edge first: did you mean ${swapped.join(between)}?`;
  }
  const inches = [inInches(parts), inInches(swapped)].find(fits);
  return inches && `in mm, or write in after each: ${inches.join(" x ")}`;
}

/** Reads what the bars of the printer check measured, "179.2x239.5", short edge first, mm unless said. */
export function readPrinted(text: string, paper: Paper, margin: number): PrintedRead {
  const bars = barLengths(paper, margin);
  const allowed = `width x height of the two bars, near ${bars.x} x ${bars.y} mm on ${paper.name}`;
  const refuse = (problem: string, mend: string): PrintedRead => ({ ok: false, problem, allowed, mend });
  if (/\d,\d/.test(text))
    return refuse(
      `got "${text}", with a decimal comma`,
      `write a point, as in ${text.replace(/(\d),(?=\d)/g, "$1.")}`,
    );
  const parts = text.trim().split(/\s*[x×]\s*/i);
  const [x, y] = parts.map((p) => readLength(p, "mm"));
  if (parts.length !== 2 || !x?.ok || !y?.ok)
    return refuse(
      `got "${text}"`,
      `write both bars in mm, as in ${printNumber(bars.x * 0.996, 1)}x${printNumber(bars.y * 0.998, 1)}`,
    );
  const found = factorFrom({ x: x.value, y: y.value }, paper, margin);
  if (found.ok) return found;
  const slip = slipOf(parts, (texts) => {
    const [short, long] = texts.map((t) => readLength(t, "mm"));
    return Boolean(short?.ok && long?.ok && factorFrom({ x: short.value, y: long.value }, paper, margin).ok);
  });
  if (slip !== undefined) return refuse(`got "${text}"`, slip);
  const percent = (f: number): string => `${printNumber(f * 100, 1)} %`;
  const scaled = found.even
    ? "the viewer has scaled the page (both ways alike)"
    : "that is no printer's error: a bar was misread, or the viewer fitted the page to the paper";
  return {
    ok: false,
    problem: `got "${text}", ${percent(found.factor.x)} by ${percent(found.factor.y)} of true: ${scaled}`,
    allowed: `${allowed}, within 3 %`,
    mend: "print the printer check again at 100 % (actual size, no fitting), and measure both bars, short edge first",
  };
}
