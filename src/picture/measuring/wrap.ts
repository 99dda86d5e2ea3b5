// Words set in lines of a given breadth, by the letters' own widths.
import { drawable, textWidth } from "../words.ts";

/** How a text is set: size of the font and breadth of the lines, mm. */
export type Setting = { readonly size: number; readonly width: number; readonly bold?: boolean };

/** As much of a word as fits, at least one letter, and the rest. */
function broken(word: string, fits: (text: string) => boolean): readonly [string, string] {
  const letters = Array.from(word);
  let count = 1;
  while (count < letters.length && fits(letters.slice(0, count + 1).join(""))) count += 1;
  return [letters.slice(0, count).join(""), letters.slice(count).join("")];
}

/**
 * The text in lines no broader than the setting, broken between words; a word broader than a line is
 * broken where the line ends. No text gives no lines.
 */
export function wrapped(text: string, { size, width, bold = false }: Setting): readonly string[] {
  const fits = (line: string): boolean => textWidth(line, size, bold) <= width;
  const lines: string[] = [];
  let current = "";
  for (const word of drawable(text)
    .text.split(/\s+/)
    .filter((w) => w !== "")) {
    const longer = current === "" ? word : `${current} ${word}`;
    if (fits(longer)) {
      current = longer;
      continue;
    }
    if (current !== "") lines.push(current);
    current = word;
    while (!fits(current) && Array.from(current).length > 1) {
      const [head, rest] = broken(current, fits);
      lines.push(head);
      current = rest;
    }
  }
  return current === "" ? lines : [...lines, current];
}
