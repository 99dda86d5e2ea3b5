import { z } from "zod";

// How parts meet, in job.json. Lengths mm, angles in radians, volumes mm³.

const point = z.tuple([z.number(), z.number()]);
const sizes3 = z.tuple([z.number(), z.number(), z.number()]);

const strapInBuckle = z.strictObject({
  kind: z.literal("strap in buckle"),
  piece: z.string(),
  strapWidth: z.number(),
  inside: z.number(),
  buckle: z.string(),
  dimension: z.string(),
});
const tongueInSlot = z.strictObject({
  kind: z.literal("tongue in slot"),
  piece: z.string(),
  cutout: z.string(),
  turnBack: z.string(),
  tongueThickness: z.number(),
  tongueBreadth: z.number(),
  openAngle: z.number(),
  dimension: z.string(),
});
const strapInSlot = z.strictObject({
  kind: z.literal("strap in slot"),
  piece: z.string(),
  cutout: z.string(),
  strapWidth: z.number(),
  strapThickness: z.number(),
  weave: z.strictObject({ angle: z.number(), through: z.number() }).optional(),
  dimension: z.string(),
});
const keeperRoundStack = z.strictObject({
  kind: z.literal("keeper round stack"),
  piece: z.string(),
  cut: z.number(),
  lap: z.number(),
  width: z.number(),
  height: z.number(),
  thickness: z.number(),
  neutral: z.number(),
  dimension: z.string(),
});
const adjustment = z.strictObject({
  kind: z.literal("adjustment"),
  side: z.string(),
  piece: z.string(),
  holes: z.array(z.number()),
  keeperFar: z.number(),
  point: z.number(),
  /** null where it never grows too wide. */
  swellAt: z.number().nullable(),
  swellIs: z.string(),
  dimension: z.string(),
  tipDimension: z.string(),
  bodySection: z.string(),
  outsideFit: z.literal(true).optional(),
});

const seam = z.strictObject({
  kind: z.literal("seam"),
  name: z.string(),
  sides: z.array(z.strictObject({ piece: z.string(), seam: z.string() })),
  bend: z.strictObject({ angle: z.number(), radii: z.array(z.number()) }).optional(),
  stack: z.number(),
  backStitches: z.tuple([z.number(), z.number()]),
  dimension: z.string(),
});
const fixed = z.strictObject({
  kind: z.literal("fixed"),
  name: z.string(),
  by: z.enum(["rivet", "binding screw", "stitch"]),
  sides: z.array(z.strictObject({ piece: z.string(), holes: z.array(z.string()) })),
  stack: z.number(),
  dimension: z.string(),
});
const gather = z.strictObject({
  kind: z.literal("gather"),
  gusset: z.string(),
  body: z.string(),
  seams: z.array(z.string()),
  inset: z.number(),
  fold: z.number(),
  thickness: z.number(),
  wetMoulded: z.boolean(),
  dimension: z.string(),
});
const closureSide = z.strictObject({ piece: z.string(), at: point, baseLine: z.number() });
const closure = z.strictObject({
  kind: z.literal("closure"),
  what: z.string(),
  flap: closureSide,
  front: closureSide,
  reach: z.number(),
  reachEmpty: z.number(),
  flapEnd: z.number(),
  dimension: z.string(),
});

const inwardFold = z.strictObject({
  kind: z.literal("inward fold"),
  piece: z.string(),
  topWidth: z.number(),
  height: z.number(),
  apart: z.number(),
  insideWidth: z.number(),
  dimension: z.string(),
});

export const join = z.discriminatedUnion("kind", [
  strapInBuckle,
  tongueInSlot,
  strapInSlot,
  keeperRoundStack,
  adjustment,
  seam,
  fixed,
  gather,
  closure,
  inwardFold,
]);

/** What goes in: the volume in mm³ and in litres. */
export const capacity = z.strictObject({
  volume: z.number(),
  litres: z.number(),
  inside: sizes3,
  things: z.array(
    z.strictObject({
      name: z.string(),
      sizes: sizes3,
      goes: z.boolean(),
      lacksHeight: z.number().optional(),
      source: z.string(),
    }),
  ),
  wanted: z.string().optional(),
});

export const assemblyStep = z.strictObject({
  name: z.string(),
  does: z.enum(["stitch", "rivet", "glue", "fix", "turn", "fold", "slide", "thread"]),
  after: z.array(z.string()),
  reaches: z.array(z.string()),
  shuts: z.array(z.string()),
});
