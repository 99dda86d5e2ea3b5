import { factTable, readAt } from "./table.ts";

const SOURCE = "V. Desgrange, Thread for saddle work, 2002";

/** Hand-laid linen cords beside the numbers of machine thread. */
export const threadFacts = factTable({
  name: "threads",
  title: "Threads",
  columns: [
    { title: "linen cords", kind: "count" },
    { title: "machine thread, about No.", kind: "count" },
    { title: "used for", kind: "words" },
  ],
  rows: readAt(SOURCE, [
    [2, 138, ""],
    [3, 207, "fine work, English bridle work"],
    [4, 277, "standard bridle work, tack"],
    [5, 346, "western saddle, buggy harness"],
    [6, 415, "heavy harness"],
  ]),
  note: "No sizes in mm are given: the lists that were found contradict each other. Measure your thread.",
});
