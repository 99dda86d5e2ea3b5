import { HORSE_SIZES, HORSE_SIZES_SOURCE, HORSE_SIZES_TAKEN } from "../horseSizes.ts";
import { factTable, readAt } from "./table.ts";

const DIFFER = "Sizes differ between makers: take them as ranges, and measure the horse.";

/** Headstall sizes by their measure over the poll. */
export const headstallSizeFacts = factTable({
  name: "headstalls",
  title: "Headstall sizes, bit to bit over the poll",
  columns: [
    { title: "size", kind: "words" },
    { title: "from", kind: "length" },
    { title: "to", kind: "length" },
    { title: "browband from", kind: "length" },
    { title: "browband to", kind: "length" },
  ],
  rows: readAt(
    HORSE_SIZES_SOURCE,
    HORSE_SIZES.map((s) => [s.name, s.from, s.to, s.browband[0], s.browband[1]]),
  ),
  note: `Measured ${HORSE_SIZES_TAKEN}. ${DIFFER}`,
});

const CHART = "size-charts.com, Horse bridle size chart";

const PARTS: readonly (readonly [size: string, part: string, cm: number, inches: number])[] = [
  ["Shetland", "headpiece", 91, 36],
  ["Shetland", "browband", 32, 12.5],
  ["Shetland", "cheek", 18, 7],
  ["Shetland", "noseband", 66, 26],
  ["Pony", "headpiece", 99.5, 39],
  ["Pony", "browband", 34, 13.5],
  ["Pony", "cheek", 23, 9],
  ["Pony", "noseband", 73.5, 29],
  ["Cob", "headpiece", 112, 44],
  ["Cob", "browband", 37, 14.5],
  ["Cob", "cheek", 25, 10],
  ["Cob", "noseband", 81, 32],
  ["Full", "headpiece", 117, 46],
  ["Full", "browband", 39, 15.5],
  ["Full", "cheek", 28, 11],
  ["Full", "noseband", 86.5, 34],
  ["Extra Full", "headpiece", 127, 50],
  ["Extra Full", "browband", 42, 16.5],
  ["Extra Full", "cheek", 30, 12],
  ["Extra Full", "noseband", 91.5, 36],
];

/** What the parts of an English bridle measure, as a chart has them, in both its units. */
export const bridleSizeFacts = factTable({
  name: "bridles",
  title: "Bridle sizes, by part",
  columns: [
    { title: "size", kind: "words" },
    { title: "part", kind: "words" },
    { title: "cm", kind: "number" },
    { title: "in", kind: "number" },
  ],
  rows: readAt(CHART, PARTS),
  note: `The chart doesn't say between which points its parts were measured, so no order is compared with it. ${DIFFER}`,
});
