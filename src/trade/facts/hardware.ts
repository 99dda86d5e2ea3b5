import { MM_PER_INCH, roundTo } from "../../units/index.ts";
import { type FactRow, factTable, readAt } from "./table.ts";

const NAMES = "leprevo.co.uk, Sizes";
const LINES = "sizes.com, Buttons: 40 lines to the inch";
const SCREWS = "usbind.com, What size should I purchase";
const THREADS = "unified thread numbers, quoted at moypiano.com";

const workedOut = (source: string, ...cells: FactRow["cells"]): FactRow => ({
  cells,
  standing: "worked out from figures read",
  source,
});
const remembered = (...cells: FactRow["cells"]): FactRow => ({
  cells,
  standing: "from memory",
  source: "from memory",
});

/** What the size of a piece of hardware means. */
export const hardwareFacts = factTable({
  name: "hardware",
  title: "What hardware sizes mean",
  columns: [
    { title: "hardware", kind: "words" },
    { title: "its size is", kind: "words" },
    { title: "across, mm", kind: "number" },
  ],
  rows: [
    ...readAt(NAMES, [
      ["buckle", "the width of the strap that fits", undefined],
      ["trigger hook", "the width of the strap that fits", undefined],
      ["D ring", "the inside length of its flat", undefined],
      ["O ring", "its inside diameter", undefined],
      ["split ring", "its outside diameter", undefined],
      ["eyelet No. 200", "a number; inside diameter", 4],
      ["eyelet No. 500", "a number; inside diameter", 5.5],
      ["eyelet No. 700", "a number; inside diameter", 6.5],
    ]),
    ...readAt(LINES, [["snap, line 20", "its cap, not its hole", 12.7]]),
    workedOut(LINES, "snap, line 24", "its cap, not its hole", 15.24),
    ...readAt(SCREWS, [
      ["binding screw", "the length of its shank; No. 4 and No. 8 threads don't mix", undefined],
    ]),
    workedOut(THREADS, "No. 8 thread", "its outside diameter", roundTo(0.164 * MM_PER_INCH, 2)),
    remembered("copper rivet No. 9", "a wire number; its shank", 3.8),
    remembered("copper rivet No. 12", "a wire number; its shank", 2.8),
  ],
  note: "Measure the hardware you have: inside width, bar and tongue go into the order, not the name.",
});
