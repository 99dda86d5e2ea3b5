import type { Made } from "../../model/article.ts";
import type { ThreadList, ThreadRow } from "../../model/bench.ts";
import type { Units } from "../../model/say.ts";
import { capital } from "../../model/words.ts";
import { printNumber } from "../../units/index.ts";
import { type DocumentBlock, left, right, tableUnder } from "./document.ts";
import { namesIn, sayThread } from "./words.ts";

// What is sewn, and with how much thread.

const sayStitches = ({ stitches, backStitches }: ThreadRow): string =>
  backStitches === 0 ? `${stitches}` : `${stitches} + ${backStitches} back`;

/** What the advice calls the shop's own thread, and the one that these seams would be sewn with by habit. */
const YOURS = "your thread";
const THREAD = "thread";
/** Beside a thread that is chosen already, the habit is only something to compare it with. */
const SUITS = "to compare, what usually suits these seams";

/** The thread list with the thread that is ordered, and the habits that thread, needles and awl are chosen by. */
export function threadSection(
  { rows, total, stitches, advice }: ThreadList,
  made: Pick<Made, "pieces">,
  { units, ordered }: { readonly units: Units; readonly ordered: string },
): readonly DocumentBlock[] {
  const names = namesIn(made);
  const table = tableUnder("Thread", {
    columns: [
      left("Seam"),
      left("Pieces"),
      ...["Times", "Stitches each", "Pitch", "Through", "Thread each", "Lengths each"].map(right),
    ],
    rows: rows.map((r) => [
      capital(r.seam),
      names(r.pieces),
      `${r.times}`,
      sayStitches(r),
      `${printNumber(r.pitch, 2)} mm`,
      `${printNumber(r.stack, 1)} mm`,
      sayThread(r.length, units),
      `${r.needlefuls}`,
    ]),
    foot: ["All together", "", "", `${stitches}`, "", "", sayThread(total, units), ""],
    note: "Through: the leather, at its thickest. Each: for one sewing, tails counted. Lengths: how many lengths of thread it is sewn with, one after the other.",
  });
  const own = ordered !== "" || advice.some((a) => a.what === YOURS);
  const name = (what: string): string => capital(what === THREAD && own ? SUITS : what);
  const says = [
    ...(ordered === "" || rows.length === 0 ? [] : [`Ordered: ${ordered}.`]),
    ...advice.map((a) => `${name(a.what)}: ${a.says}${a.source === "" ? "" : ` (${a.source})`}.`),
  ];
  return says.length === 0 ? table : [...table, { kind: "list", items: says }];
}
