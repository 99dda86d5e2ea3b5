// What stands in the title block.
import type { Die } from "../../die/die.ts";
import type { Units } from "../../model/say.ts";
import type { DieTitle } from "./dieTitle.ts";
import { sayScale, sayUnits } from "./figures.ts";
import type { FieldRow } from "./titleBlock.ts";
import { BEVEL_SHORT, sayDies, sayLeatherUpTo, sayRule, saySide, toleranceShort } from "./words.ts";

type Titled = { readonly die: Die; readonly units: Units; readonly title: DieTitle };
/** The sheet's own: no scale where nothing is drawn to one. */
type Of = {
  readonly scale: number | undefined;
  readonly sheet: number;
  readonly of: number;
  /** A sheet of words after the view: no more than what tells it from other drawings' sheets. */
  readonly brief?: boolean;
};

/** The block's rows, from its top. */
export function titleRows(titled: Titled, of: Of): readonly FieldRow[] {
  const rows = [...namesOf(titled, of), ...orderedBy(titled)];
  return of.brief ? rows.slice(0, BRIEF_ROWS) : rows;
}

/** Names and number, owner and article. */
const BRIEF_ROWS = 2;

function namesOf({ title }: Titled, { scale, sheet, of }: Of): readonly FieldRow[] {
  return [
    [
      { name: "title", says: title.piece, share: 4.4, large: true },
      { name: "number", says: title.number, share: 5.2, large: true },
      { name: "revision", says: title.revision, share: 1.3, large: true },
      { name: "scale", says: scale === undefined ? "–" : sayScale(scale), share: 1.7, large: true },
      { name: "sheet", says: `${sheet} of ${of}`, share: 1.7, large: true },
    ],
    [
      { name: "legal owner", says: title.owner, share: 3 },
      { name: "article", says: title.article, share: 3 },
      { name: "for", says: title.forWhom, share: 3.5 },
      {
        name: "document type",
        says: title.board === undefined ? "die drawing" : "definition only: do not make",
        share: 2,
      },
      { name: "date of issue", says: title.date, share: 2 },
    ],
  ];
}

function orderedBy({ die, units, title }: Titled): readonly FieldRow[] {
  return [
    [
      { name: "side", says: saySide(title.side), share: 3 },
      { name: "pieces", says: title.hand, share: 2.6 },
      { name: "dies", says: sayDies(die, title), share: 2.4 },
      { name: "view", says: "grain side", share: 1.6 },
      { name: "tolerance", says: toleranceShort(die, units), share: 3.4 },
    ],
    [
      { name: "rule", says: sayRule(die, units), share: 6 },
      { name: "rule is ground on", says: BEVEL_SHORT[die.settings.bevel], share: 2.2 },
      { name: "leather", says: sayLeatherUpTo(die, units), share: 4 },
    ],
    [
      { name: "sizes on the view", says: sayUnits(units), share: 3.4 },
      { name: "tables", says: "millimetres, inches in [ ]", share: 3 },
      { name: "created by", says: "", share: 3 },
      { name: "approved by", says: "", share: 3 },
    ],
  ];
}
