// Text for a DXF file of release 2000: ASCII alone, one line, nothing in it that a reader takes for a command.
import { steady } from "../picture/words.ts";

/** A line of such a file holds 255 characters. */
const LONGEST = 250;

/** \U+0416 for a character beyond ASCII; one beyond four hexadecimal digits is named in brackets. */
function coded(char: string): string {
  const code = char.codePointAt(0)!;
  const hex = code.toString(16).toUpperCase().padStart(4, "0");
  return code > 0xffff ? `(U+${hex})` : `\\U+${hex}`;
}

function written(char: string, before: string | undefined): string {
  const code = char.codePointAt(0)!;
  // %% begins a command, and readers differ on how it is written when it is meant: a space parts the two.
  if (char === "%") return before === "%" ? " %" : "%";
  // ^ begins a control character; with a space it is itself.
  if (char === "^") return "^ ";
  if (char === "\\") return coded(char);
  return code >= 0x20 && code < 0x7f ? char : coded(char);
}

/**
 * The text on one line, in ASCII: control characters and those that turn the reading direction are gone, line
 * breaks are spaces, characters beyond ASCII are written by their numbers, and what a reader would take for a
 * command is written so that it is none. Cut short, with "...", where the line would be too long.
 */
export function dxfText(text: string): string {
  const chars = Array.from(steady(text));
  const parts = chars.map((char, i) => written(char, chars[i - 1]));
  const whole = parts.join("");
  if (whole.length <= LONGEST) return whole;
  let short = "";
  for (const part of parts) {
    if (short.length + part.length > LONGEST - 3) break;
    short += part;
  }
  return `${short}...`;
}

/** How many letters a reader shows of such a text at most. */
export const lettersIn = (text: string): number => Array.from(dxfText(text)).length;
