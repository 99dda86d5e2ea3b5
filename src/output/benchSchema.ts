import { z } from "zod";
import { FITTING_KINDS } from "../model/fitting.ts";
import { WORK_KINDS } from "../model/work.ts";

// The bench sheet in job.json. Lengths mm, areas mm², money in whole minor units of the currency.

const text = z.string();
const texts = z.array(text);
const whole = z.int();

const cutRow = z.strictObject({
  piece: text,
  name: text,
  count: whole,
  hand: text,
  leather: text,
  thickness: z.number(),
  skived: z.array(z.strictObject({ to: z.number(), where: text })),
  length: z.number(),
  width: z.number(),
  grain: text,
  cutBy: z.enum(["die", "strap cutter", "knife"]),
});
const stripRow = z.strictObject({
  leather: text,
  thickness: z.number(),
  width: z.number(),
  straps: z.array(z.strictObject({ piece: text, name: text, count: whole, length: z.number() })),
  sum: z.number(),
  allowance: z.number(),
  total: z.number(),
});
const hardwareRow = z.strictObject({
  kind: z.enum(FITTING_KINDS),
  name: text,
  count: whole,
  spares: whole,
  size: z.number().optional(),
  details: texts,
  shank: z
    .strictObject({
      diameter: z.number(),
      stack: z.number(),
      from: z.number(),
      to: z.number(),
      chosen: z.number().optional(),
      listFrom: text,
    })
    .optional(),
  brought: z.boolean(),
  pieces: texts,
});
const punchRow = z.strictObject({
  what: z.enum(["round", "slot"]),
  size: z.number(),
  length: z.number().optional(),
  use: text,
  count: whole,
  places: z.array(z.strictObject({ piece: text, count: whole })),
  punch: z.number().optional(),
  number: text.optional(),
  how: text,
});
const thread = z.strictObject({
  rows: z.array(
    z.strictObject({
      seam: text,
      pieces: texts,
      times: whole,
      stitches: whole,
      backStitches: whole,
      pitch: z.number(),
      stack: z.number(),
      length: z.number(),
      needlefuls: whole,
    }),
  ),
  total: z.number(),
  stitches: whole,
  advice: z.array(z.strictObject({ what: text, says: text, source: text })),
});
const leatherRow = z.strictObject({
  leather: text,
  thickness: z.number(),
  pieces: texts,
  net: z.number(),
  yield: z.number(),
  yieldFrom: text,
  needed: z.number(),
  ofSide: z.number().optional(),
});
const workStep = z.strictObject({
  id: text,
  does: z.enum(WORK_KINDS as [string, ...string[]]),
  says: text,
  pieces: texts,
  tool: text,
  setting: text,
  amount: z.number(),
  minutes: z.number().optional(),
  after: texts,
});
const priceLine = z.strictObject({ what: text, how: text, minor: whole });
const price = z.strictObject({
  currency: z.strictObject({ code: text, digits: whole, name: text }),
  materials: z.array(priceLine),
  labour: z.array(priceLine),
  overhead: priceLine,
  cost: whole,
  margin: priceLine,
  rounding: whole,
  beforeTax: whole,
  tax: priceLine,
  total: whole,
  deposit: whole,
  balance: whole,
  incomplete: z.boolean(),
});

export const bench = z.strictObject({
  cut: z.array(cutRow),
  strips: z.array(stripRow),
  hardware: z.array(hardwareRow),
  punches: z.array(punchRow),
  thread,
  leather: z.array(leatherRow),
  steps: z.array(workStep),
  minutes: z.number(),
  price: price.optional(),
  unpriced: texts,
});
