import { MM_PER_INCH } from "../../units/index.ts";
import { type FactRow, factTable } from "./table.ts";

const HABIT = "common practice, no source";
const ISO_216 = "ISO 216, A series, trimmed sizes (thickness: common practice, no source)";
const ANSI = "ANSI/ASME Y14.1, size A, 8 1/2 × 11 in (thickness: common practice, no source)";
const CARD = "from memory: ISO/IEC 7810, the card named ID-1";

/** Something that a bag may have to hold, taken as a box; mm. */
export type Thing = {
  readonly name: string;
  readonly sizes: readonly [long: number, wide: number, thick: number];
  readonly source: string;
};

/** Names of the common things, as an order writes them. */
export const thingNames = [
  "A4 pad",
  "A5 book",
  "A6 book",
  "letter pad",
  "bank card",
  "phone",
  "750 ml bottle",
] as const;

const SIZES: Readonly<Record<(typeof thingNames)[number], Omit<Thing, "name">>> = {
  "A4 pad": { sizes: [297, 210, 10], source: ISO_216 },
  "A5 book": { sizes: [210, 148, 20], source: ISO_216 },
  "A6 book": { sizes: [148, 105, 15], source: ISO_216 },
  "letter pad": { sizes: [11 * MM_PER_INCH, 8.5 * MM_PER_INCH, 10], source: ANSI },
  "bank card": { sizes: [85.6, 53.98, 0.76], source: CARD },
  phone: { sizes: [160, 78, 10], source: HABIT },
  "750 ml bottle": { sizes: [300, 75, 75], source: HABIT },
};

/** The common things. */
export const THINGS: readonly Thing[] = thingNames.map((name) => ({ name, ...SIZES[name] }));

const standing = (source: string): FactRow["standing"] =>
  source === HABIT ? HABIT : source === CARD ? "from memory" : "read at its source";

/** What commonly goes into a bag. */
export const thingFacts = factTable({
  name: "things",
  title: "Things that go into a bag",
  columns: [
    { title: "thing", kind: "words" },
    { title: "long", kind: "length" },
    { title: "wide", kind: "length" },
    { title: "thick", kind: "length" },
  ],
  rows: THINGS.map((t) => ({
    cells: [t.name, ...t.sizes],
    standing: standing(t.source),
    source: t.source,
  })),
  note: "Makers' books, phones and bottles differ: measure yours. A bottle is taken as a box.",
});
