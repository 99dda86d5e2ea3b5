import { AMOUNT, readAmount } from "./amount.ts";
import { quote } from "./quote.ts";
import { misread, type Reading, read } from "./reading.ts";
import { pastTraps, unread, type Wanted } from "./traps.ts";
import { MM_PER_INCH } from "./unit.ts";

const WANTED: Wanted = {
  what: "an area",
  how: 'write a number and its unit, as in "22 square feet", "200 square decimetres" or "2 square metres"',
};

/** Square millimetres in the units that leather is sold by; exact, from the international inch. */
export const MM2_PER = {
  "square foot": (12 * MM_PER_INCH) ** 2,
  "square decimetre": 1e4,
  "square metre": 1e6,
} as const;
export type AreaUnit = keyof typeof MM2_PER;
export const AREA_UNITS = Object.keys(MM2_PER) as readonly AreaUnit[];

/** Words of a unit without "square", each with the unit. */
const WORDS: readonly (readonly [RegExp, AreaUnit])[] = [
  [/^(?:ft|foot|feet|')$/, "square foot"],
  [/^(?:dm|decimet(?:re|er)s?)$/, "square decimetre"],
  [/^(?:m|met(?:re|er)s?)$/, "square metre"],
];

/** "sq. ft", "square feet", "ft2", "ft²", "dm^2". */
function areaUnitOf(word: string): AreaUnit | undefined {
  const small = word.toLowerCase().trim();
  const side = /^(?:square|sq\.?) ?(.+?)\.?$/.exec(small)?.[1] ?? /^(.+?)\.?(?: ?\^?2|²)$/.exec(small)?.[1];
  return side === undefined ? undefined : WORDS.find(([form]) => form.test(side))?.[1];
}

const FORM = new RegExp(`^(${AMOUNT}) ?(.*)$`);

/**
 * Reads an area in mm²: `22 square feet`, `22 sq ft`, `22 1/2 ft²`, `200 dm2`, `2 square metres`. Without
 * a unit it is a fault that asks for one.
 */
export function readArea(text: string): Reading<number> {
  const clear = pastTraps(text, WANTED);
  if (!clear.ok) return clear;
  const match = FORM.exec(clear.value);
  if (!match) return unread(text, WANTED);
  const [, written = "", word = ""] = match;
  const amount = readAmount(written, text, clear.value);
  if (!amount.ok) return amount;
  if (word === "") return misread(`got ${quote(text)}, a number without a unit`, WANTED.how);
  const unit = areaUnitOf(word);
  if (!unit) return misread(`got ${quote(text)}: ${quote(word)} is no unit of area here`, WANTED.how);
  return read((amount.value.top / amount.value.bottom) * MM2_PER[unit]);
}
