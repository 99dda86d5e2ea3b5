import type { Made } from "../../model/article.ts";
import type { HardwareRow, PunchRow } from "../../model/bench.ts";
import { sayValue, type Units } from "../../model/say.ts";
import { capital } from "../../model/words.ts";
import { printLength, printNumber } from "../../units/index.ts";
import { saySizes } from "../piece/say.ts";
import { type DocumentBlock, left, right, tableUnder } from "./document.ts";
import { namesIn } from "./words.ts";

// What is bought, and what is punched.

/** How long a screw or rivet is taken: `shank 5 mm through 7.1 mm of leather: 7.1 to 8.5 mm long; take 5/16 in (7.9 mm)`. */
function shankWords({ shank }: HardwareRow, units: Units): readonly string[] {
  if (!shank) return [];
  const mm = (n: number): string => printNumber(n, 1);
  const through = `shank ${mm(shank.diameter)} mm, through ${mm(shank.stack)} mm of leather`;
  // Where none of the shop's lengths does, the row's own details say what to do.
  if (shank.chosen === undefined) return [through];
  const range = `${through}: ${mm(shank.from)} to ${mm(shank.to)} mm long`;
  const from = shank.listFrom === "" ? "" : ` (lengths: ${shank.listFrom})`;
  return [`${range}; take ${printLength(shank.chosen, units)}${from}`];
}

/** `buckle: cheek buckle`; a name that tells the kind is enough. */
const sayWhat = ({ kind, name }: HardwareRow): string =>
  capital(name.toLowerCase().includes(kind) ? name : `${kind}: ${name}`);

/** The hardware list. */
export const hardwareSection = (
  rows: readonly HardwareRow[],
  made: Pick<Made, "pieces">,
  units: Units,
): readonly DocumentBlock[] =>
  tableUnder("Hardware", {
    columns: [left("What"), right("Needed"), right("Spare"), left("Size"), left("To know"), left("On")],
    rows: rows.map((r) => [
      sayWhat(r),
      `${r.count}`,
      `${r.spares}`,
      r.size === undefined ? "–" : sayValue(r.size, "length", units),
      [...(r.brought ? ["the customer brings it"] : []), ...shankWords(r, units), ...r.details].join("; "),
      namesIn(made)(r.pieces),
    ]),
  });

/** Holes are said in mm whatever the units: a 32nd of an inch is too coarse. */
const sayHole = ({ what, size, length }: PunchRow): string =>
  length === undefined ? `${what}, ${printNumber(size, 1)} mm` : `${what}, ${saySizes(length, size, "mm")}`;

/** Every hole and slot by size and use. */
export function punchSection(
  rows: readonly PunchRow[],
  made: Pick<Made, "pieces">,
): readonly DocumentBlock[] {
  const names = namesIn(made);
  return tableUnder("Holes and slots", {
    columns: [left("Hole"), left("For"), right("In all"), left("On"), left("Made with")],
    rows: rows.map((r) => [
      sayHole(r),
      r.use,
      `${r.count}`,
      r.places.map((p) => `${names([p.piece])}: ${p.count}`).join("; "),
      r.how,
    ]),
  });
}
