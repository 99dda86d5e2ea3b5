import { PAPERS } from "../paper.ts";
import { factTable, type Standing } from "./table.ts";

const HABIT = "common practice, no source";
const standing = (source: string): Standing => (source.startsWith(HABIT) ? HABIT : "read at its source");

/** Papers that templates are printed on, upright. */
export const paperFacts = factTable({
  name: "papers",
  title: "Papers",
  columns: [
    { title: "paper", kind: "words" },
    { title: "width", kind: "length" },
    { title: "height", kind: "length" },
  ],
  rows: PAPERS.map((p) => ({
    cells: [p.name, p.width, p.height],
    standing: standing(p.source),
    source: p.source,
  })),
  note: "A roll is ordered by its width.",
});
