import { AMOUNT, WORD } from "./amount.ts";
import { unitOf } from "./unit.ts";

/** The parts of a thickness as written: one amount, or the two ends of a range. */
export type ThicknessParts = {
  readonly from: string;
  readonly fromWord: string | undefined;
  readonly to: string | undefined;
  readonly toWord: string | undefined;
  /** True when a slash stands between the ends, as in `8/9 oz`. */
  readonly slash: boolean;
};

const DECIMAL = String.raw`(?:\d*\.\d+|\d+)`;
const SLASHED = new RegExp(`^(${DECIMAL}) ?/ ?(${DECIMAL}) ?(${WORD})$`, "i");
const FORM = new RegExp(`^(${AMOUNT})(?: ?(${WORD}))?(?: ?(?:-|to) ?(${AMOUNT})(?: ?(${WORD}))?)?$`, "i");

/** Takes a tidied thickness apart; undefined when it is none. A slash makes a range in all units but in. */
export function splitThickness(tidied: string): ThicknessParts | undefined {
  const slashed = SLASHED.exec(tidied);
  const unit = unitOf(slashed?.[3] ?? "");
  if (slashed && (unit === "oz" || unit === "iron" || unit === "mm")) {
    return { from: slashed[1] ?? "", fromWord: undefined, to: slashed[2], toWord: slashed[3], slash: true };
  }
  const match = FORM.exec(tidied);
  if (!match) return undefined;
  const [, from = "", fromWord, to, toWord] = match;
  return { from, fromWord, to, toWord, slash: false };
}
