import type { PageView } from "../../job.ts";
import { MM_PER_INCH } from "./ticks.ts";

/** The finest mark on a saddler's rule, parts of an inch. */
const PARTS = 32;

function inchText(mm: number): string {
  let parts = Math.round((mm / MM_PER_INCH) * PARTS);
  const whole = Math.floor(parts / PARTS);
  parts %= PARTS;
  let bottom = PARTS;
  while (parts > 0 && parts % 2 === 0) {
    parts /= 2;
    bottom /= 2;
  }
  if (parts === 0) return `${whole}`;
  return whole === 0 ? `${parts}/${bottom}` : `${whole} ${parts}/${bottom}`;
}

/** A length measured on the drawing, not negative: `13 1/2 in (342.9 mm)`, `342.9 mm`, `34.29 cm`. */
export function sayLength(mm: number, units: PageView["units"]): string {
  const plain = `${Math.round(mm * 10) / 10} mm`;
  if (units === "mm") return plain;
  if (units === "cm") return `${Math.round(mm * 10) / 100} cm`;
  return `${inchText(mm)} in (${plain})`;
}
