// What stands in the title block.
import type { Die } from "../../die/die.ts";
import type { Units } from "../../model/say.ts";
import { sayLeather } from "../piece/say.ts";
import { sayScale, sayUnits } from "./figures.ts";
import type { FieldRow } from "./titleBlock.ts";
import { BEVEL_SHORT, sayDies, sayRule, sayTolerance } from "./words.ts";

/** The drawing's names, as they are printed. */
export type DieTitle = {
  readonly owner: string;
  readonly article: string;
  readonly forWhom: string;
  readonly piece: string;
  readonly number: string;
  readonly revision: string;
  readonly date: string;
  /** "left as drawn", "right: turned over". */
  readonly side: string;
  readonly hand: string;
};

type Titled = { readonly die: Die; readonly units: Units; readonly title: DieTitle };
/** The sheet's own: no scale where nothing is drawn to one. */
type Of = { readonly scale: number | undefined; readonly sheet: number; readonly of: number };

/** The block's rows, from its top. */
export function titleRows({ die, units, title }: Titled, { scale, sheet, of }: Of): readonly FieldRow[] {
  return [
    [
      { name: "title", says: title.piece, share: 5, large: true },
      { name: "number", says: title.number, share: 4, large: true },
      { name: "revision", says: title.revision, share: 1.5, large: true },
      { name: "scale", says: scale === undefined ? "–" : sayScale(scale), share: 1.8, large: true },
      { name: "sheet", says: `${sheet} of ${of}`, share: 1.8, large: true },
    ],
    [
      { name: "legal owner", says: title.owner, share: 3 },
      { name: "article", says: title.article, share: 3 },
      { name: "for", says: title.forWhom, share: 3.5 },
      { name: "document type", says: "die drawing", share: 2 },
      { name: "date of issue", says: title.date, share: 2 },
    ],
    [
      { name: "side", says: title.side, share: 2.6 },
      { name: "pieces", says: title.hand, share: 3 },
      { name: "dies", says: sayDies(die), share: 2.4 },
      { name: "view", says: "grain side", share: 1.6 },
      { name: "tolerance", says: sayTolerance(die, units), share: 3.4 },
    ],
    [
      { name: "rule", says: sayRule(die, units), share: 6 },
      { name: "rule is ground on", says: BEVEL_SHORT[die.settings.bevel], share: 2.2 },
      { name: "leather", says: sayLeather(die.piece, units), share: 4 },
    ],
    [
      { name: "sizes on the view", says: sayUnits(units), share: 3.4 },
      { name: "tables", says: "millimetres", share: 2 },
      { name: "created by", says: "", share: 3 },
      { name: "approved by", says: "", share: 3 },
    ],
  ];
}
