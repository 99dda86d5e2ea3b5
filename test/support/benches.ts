import { headstall } from "../../src/articles/headstall.ts";
import { makeJob } from "../../src/job.ts";
import type { Bench, CutRow, LeatherRow, WorkStep } from "../../src/model/bench.ts";
import type { BenchPaper } from "../../src/picture/bench/benchDocument.ts";
import { madeOf, orderText } from "./madeOf.ts";
import { shopWith } from "./shops.ts";

// A bench sheet by hand, for a headstall; its figures are invented and agree with one another.

const strap = { leather: "strap", thickness: 3.571875 } as const;
const keeper = { leather: "keeper", thickness: 1.984375 } as const;
const along = "along the longer side, left to right on the template";

const cut: readonly CutRow[] = [
  {
    ...{ piece: "crown", name: "Crown", count: 1, hand: "as drawn", ...strap, skived: [] },
    ...{ length: 743.625, width: 15.875, grain: along, cutBy: "strap cutter" },
  },
  {
    ...{ piece: "cheek", name: "Cheek", count: 2, hand: "1 as drawn, 1 turned over", ...strap },
    skived: [
      { to: 1.984375, where: "at the fold round the buckle bar, and behind it" },
      { to: 0, where: "feathered behind the fold round the buckle bar" },
    ],
    ...{ length: 352.69416, width: 31.75, grain: along, cutBy: "knife" },
  },
  {
    ...{ piece: "keeper-fixed", name: "Fixed keeper", count: 2, hand: "all alike", ...keeper },
    skived: [{ to: 1, where: "at both ends" }],
    ...{ length: 54.2716, width: 9.35, grain: along, cutBy: "die" },
  },
];

const leather: readonly LeatherRow[] = [
  {
    ...{ ...strap, pieces: ["crown", "cheek"], net: 24030.2077, yield: 0.75 },
    ...{ yieldFrom: "a hide diagram", needed: 32040.277, ofSide: 0.0157 },
  },
  {
    ...{ ...keeper, pieces: ["keeper-fixed"], net: 2300.7909, yield: 0.75 },
    ...{ yieldFrom: "a hide diagram", needed: 3067.7212 },
  },
];

const step = (id: string, does: WorkStep["does"], says: string, more: Partial<WorkStep> = {}): WorkStep => ({
  id,
  does,
  says,
  pieces: ["cheek"],
  tool: "",
  setting: "",
  amount: 1,
  after: [],
  ...more,
});

const steps: readonly WorkStep[] = [
  step("set-up", "setUp", "Lay out the templates and check the square", { minutes: 15, pieces: [] }),
  step("cut-crown", "cutStrap", "Cut 1 strap for the crown", {
    ...{ tool: "strap cutter", setting: "set to 5/8 in (15.9 mm)", minutes: 2, pieces: ["crown"] },
  }),
  step("cut-keepers", "cutByDie", "Cut 2 fixed keepers", {
    ...{ tool: "steel die and press", minutes: 1, pieces: ["keeper-fixed"] },
  }),
  step("groove", "groove", "Groove the stitch lines of the turn-backs", {
    ...{ tool: "groover", setting: "3 mm from the edge", minutes: 3.5 },
  }),
  step("skive", "skive", "Skive the cheeks to 2 mm at the fold round the buckle bar", {
    ...{ tool: "skiving knife", setting: "over 22 mm, on the flesh side" },
  }),
  step("stitch", "stitch", "Sew the turn-backs round the buckle bar", {
    ...{ tool: "two needles and an awl", setting: "8 stitches to the inch", minutes: 42 },
  }),
];

/** Unpriced nothing: every line has its rate. */
export const bench: Bench = {
  cut,
  strips: [
    {
      ...{ ...strap, width: 15.875, sum: 743.625, allowance: 37.18125, total: 780.80625 },
      straps: [{ piece: "crown", name: "Crown", count: 1, length: 743.625 }],
    },
  ],
  hardware: [
    {
      ...{ kind: "buckle", name: "cheek buckle", count: 2, spares: 0, size: 15.875, brought: false },
      ...{ details: ["bar 4 mm", "tongue 3 mm thick, 3.5 mm broad at its eye"], pieces: ["cheek"] },
    },
    {
      ...{ kind: "binding screw", name: "screws of the bit end", count: 4, spares: 1, brought: false },
      ...{ details: ["head 9 mm"], pieces: ["cheek"] },
      shank: {
        diameter: 5,
        stack: 5.55625,
        from: 4.75625,
        to: 5.25625,
        chosen: 4.7625,
        listFrom: "shop.yaml",
      },
    },
    {
      ...{ kind: "bit", name: "bit", count: 1, spares: 0, brought: true, pieces: ["cheek"] },
      details: ["its rings' wire 8 mm where the cheeks bear"],
    },
  ],
  punches: [
    {
      ...{ what: "round", size: 4, use: "buckle", count: 10, punch: 4, how: "punch 4 mm" },
      places: [{ piece: "crown", count: 10 }],
    },
    {
      ...{ what: "slot", size: 4.5, length: 23, use: "tongue slot", count: 2, punch: 4.5 },
      how: "slot punch 23 by 4.5 mm, or punch 4.5 mm at both ends and a knife between them",
      places: [{ piece: "cheek", count: 2 }],
    },
  ],
  thread: {
    rows: [
      {
        ...{ seam: "Cheek, turn-back round the buckle bar, each edge", pieces: ["cheek"], times: 4 },
        ...{ stitches: 7, backStitches: 4, pitch: 3.175, stack: 5.55625, length: 497.64375, needlefuls: 1 },
      },
    ],
    total: 1990.575,
    stitches: 28,
    advice: [
      { what: "thread", says: "linen of 4 cords", source: "common practice, no source" },
      { what: "needles", says: "two blunt harness needles, about No. 3", source: "from memory" },
    ],
  },
  leather,
  steps,
  minutes: 63.5,
  price: {
    currency: { code: "GBP", digits: 2, name: "Pound Sterling" },
    materials: [
      { what: "strap leather, 3.57 mm", how: "0.345 square feet at 14.50", minor: 500 },
      { what: "cheek buckle: buckle, 15.9 mm", how: "2 at 3.40", minor: 680 },
      { what: "bit: bit", how: "the customer brings it: not priced", minor: 0 },
    ],
    labour: [{ what: "stitch", how: "63.5 minutes at 28.00 an hour", minor: 2963 }],
    overhead: { what: "overhead", how: "25 % of labour, 29.63", minor: 741 },
    cost: 4884,
    margin: { what: "margin", how: "20 % of the price, 61.05", minor: 1221 },
    rounding: 95,
    beforeTax: 6200,
    tax: { what: "VAT", how: "20 % of the price, 62.00, as this order says", minor: 1240 },
    total: 7440,
    deposit: 2232,
    balance: 5208,
    incomplete: false,
  },
  unpriced: ["nothing says how long it takes to skive: write minutes.skive in shop.yaml"],
};

/** Everything that the papers of that bench are made from; with parts of it changed. */
export const paperWith = (over: Partial<BenchPaper> = {}): BenchPaper => {
  const text = orderText("juniper-headstall");
  const job = makeJob(text, "juniper-headstall.yaml");
  if (!job.made) throw new Error("juniper-headstall was not made");
  return {
    dimensions: job.job.dimensions,
    bench,
    made: madeOf(text),
    order: { file: "juniper-headstall.yaml", text, article: headstall.name, forWhom: "Juniper", units: "in" },
    shop: shopWith({}, { address: "The Old Forge, Fernhollow", validDays: 30 }),
    quantity: 1,
    finish: { dye: "havana brown", edges: "burnished", thread: "" },
    ...over,
  };
};

/** Nothing to list at all. */
export const emptyBench: Bench = {
  ...{ cut: [], strips: [], hardware: [], punches: [], leather: [], steps: [], minutes: 0 },
  ...{ thread: { rows: [], total: 0, stitches: 0, advice: [] }, unpriced: [] },
};
