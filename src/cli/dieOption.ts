import { dieKeys, dieValue, oneOf, wordMeant } from "../job.ts";
import { type Ending, refused } from "./terminal.ts";

/** A name longer than this, or with other signs, is not repeated: it may do harm in a terminal. */
const PLAIN_OPTION = /^--?[A-Za-z][A-Za-z0-9_-]{0,30}$/;

export const isOption = (word: string): boolean => /^--?[^-]/.test(word);

/**
 * The ending for the first word that looks like an option and is none. What the order's section `die` takes is
 * told from what was misspelt; `options` are the command's own, as in "--paper".
 */
export function noOption(words: readonly string[], options: readonly string[]): Ending {
  const at = words.findIndex(isOption);
  const [typed = "", glued] = (words[at] ?? "").split("=", 2);
  const name = typed.replace(/^-+/, "").toLowerCase().replaceAll("_", "-");
  const own = options.map((o) => o.replace(/^-+/, ""));
  const meant = dieKeys.includes(name) ? name : wordMeant(name, [...dieKeys, ...own]);
  const shown = PLAIN_OPTION.test(typed) ? typed : "that";
  if (meant !== undefined && dieKeys.includes(meant))
    return refused(ofTheOrder(shown, meant, glued ?? valueAfter(words[at + 1] ?? "")));
  const mend = meant === undefined ? "whittaw die --help lists them" : `write --${meant}`;
  return refused(`${shown} is no option. The options are: ${oneOf(options)}. To mend: ${mend}.`);
}

/** The next word, unless it may be a piece: those have neither capitals nor figures. */
const valueAfter = (word: string): string => (/[A-Z0-9]/.test(word) ? word : "");

/** An option that is a setting of the order: shown with the value that was typed, where it can be read. */
function ofTheOrder(option: string, key: string, typed: string): string {
  const value = dieValue(key, typed);
  const how = value
    ? `write  die: { ${key}: ${value} }  in the order; where it has die: already, write ${key}: ${value} under it`
    : `write ${key}: under die: in the order`;
  return `${option} is no option: ${key} stands in the order, so that the die can be drawn again. To mend: ${how}.`;
}
