import type { Fault } from "../model/finding.ts";
import { nearestWord, oneOf } from "../model/words.ts";
import { quote } from "../units/quote.ts";
import { type Branch, nameOf, namesIn, valuesUnder, withAllUnder } from "./branch.ts";
import { type Entry, under } from "./entry.ts";

/** A name that is not known where it stands, and the paths of the values that were most likely meant. */
export type Unknown = { readonly fault: Fault; readonly meant: readonly string[] };

/** A letter more or less at the end, as in "hole" for "holes". */
const sameButOne = (a: string, b: string): boolean =>
  Math.abs(a.length - b.length) === 1 && (a.startsWith(b) || b.startsWith(a));

/** More homes than this are no hint. */
const MOST_HOMES = 3;

/** The values that a name means in a branch: one, or all those of a section. */
function pathsOf(branch: Branch, name: string): readonly string[] {
  const child = branch.branches.find((b) => nameOf(b) === name);
  return child ? valuesUnder(child) : [under(branch.path, name)];
}

const homeWords = (homes: readonly Branch[]): string =>
  `move it ${oneOf(homes.map((b) => (b.path === "" ? "to the left margin, outside all sections" : `under ${b.path}`)))}`;

/**
 * Tells of a name that is not known, and how to mend it. A name that is right elsewhere is sooner
 * misplaced than misspelt, unless a single letter is wrong.
 */
export function unknownName(entry: Entry, beside: readonly Entry[], branch: Branch, root: Branch): Unknown {
  const { key, keyPlace: place } = entry;
  const fault = { code: "unknown-key", key: under(branch.path, key), place };
  const names = namesIn(branch);
  const allowed = names.length === 0 ? {} : { allowed: oneOf(names) };
  if (branch.handed.includes(key)) {
    const problem = `${quote(key)} follows from other parts of the order and can't be set here`;
    return { fault: { ...fault, problem, ...allowed, mend: "take the line out" }, meant: [] };
  }
  const free = names.filter((name) => !beside.some((e) => e.key === name));
  const found = withAllUnder(root).filter((b) => namesIn(b).includes(key));
  const homes = found.length > MOST_HOMES ? [] : found;
  const nearest = nearestWord(key, free);
  const near =
    nearest !== undefined && (homes.length === 0 || sameButOne(nearest, key)) ? nearest : undefined;
  const ways = [
    ...(near === undefined ? [] : [`write ${near}`]),
    ...(homes.length === 0 ? [] : [homeWords(homes)]),
  ];
  const mend = ways.length === 0 ? "take the line out" : ways.join(", or ");
  const meant = [
    ...(near === undefined ? [] : pathsOf(branch, near)),
    ...homes.flatMap((b) => pathsOf(b, key)),
  ];
  return { fault: { ...fault, problem: `${quote(key)} is not known here`, ...allowed, mend }, meant };
}
