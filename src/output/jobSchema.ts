import { z } from "zod";
import { FITTING_KINDS } from "../model/fitting.ts";
import { JOB_FORMAT } from "../model/job.ts";
import { bench } from "./benchSchema.ts";
import { assemblyStep, capacity, join } from "./joinSchema.ts";

// The shape of job.json, for other programs: published as JSON Schema, and checked on every job in the tests.

const point = z.tuple([z.number(), z.number()]);
const segment = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("line"), to: point }),
  z.strictObject({ kind: z.literal("arc"), to: point, centre: point, ccw: z.boolean() }),
  z.strictObject({ kind: z.literal("cubic"), c1: point, c2: point, to: point }),
]);
const path = z.strictObject({ start: point, segments: z.array(segment), closed: z.boolean() });
const box = z.strictObject({ minX: z.number(), minY: z.number(), maxX: z.number(), maxY: z.number() });
const size = z.strictObject({ name: z.string(), value: z.number(), kind: z.string() });

const hole = z.strictObject({
  id: z.string(),
  kind: z.enum(["round", "awl", "staple"]),
  at: point,
  size: z.number(),
  angle: z.number(),
  use: z.string(),
  /** The hole of the same piece that it meets when a turn-back is folded. */
  mate: z.string().optional(),
  /** The holes of other pieces that it meets when the article is put together. */
  mates: z.array(z.strictObject({ piece: z.string(), hole: z.string() })).optional(),
});
const cutout = z.strictObject({
  id: z.string(),
  use: z.string(),
  outline: path,
  length: z.number().optional(),
  width: z.number().optional(),
});
const seam = z.strictObject({
  id: z.string(),
  path,
  length: z.number(),
  pitchAsked: z.number(),
  pitch: z.number(),
  stitches: z.int(),
  inset: z.number(),
  holes: z.array(z.string()),
  turnBack: z.string().optional(),
  numberFrom: z.int().optional(),
  joins: z.string().optional(),
  groove: z.literal(true).optional(),
  note: z.string().optional(),
  mates: z.array(z.strictObject({ piece: z.string(), seam: z.string() })).optional(),
});
const bend = z.strictObject({
  inner: z.number(),
  angle: z.number(),
  thickness: z.number(),
  neutral: z.number(),
  inside: z.enum(["flesh", "grain"]),
});
const fold = z.strictObject({
  id: z.string(),
  from: point,
  to: point,
  label: z.string(),
  bend: bend.optional(),
});
const bar = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("round"), diameter: z.number() }),
  z.strictObject({ kind: z.literal("flat"), along: z.number(), through: z.number(), corner: z.number() }),
]);
const turnBack = z.strictObject({
  id: z.string(),
  fold: z.string(),
  centre: z.number(),
  direction: z.union([z.literal(1), z.literal(-1)]),
  bar,
  neutral: z.number(),
  frontThickness: z.number(),
  backThickness: z.number(),
  wrapThickness: z.number(),
  caught: z.number(),
  clamp: z.number(),
  liftOff: z.number(),
  mates: z.array(z.tuple([z.string(), z.string()])),
  wrapHalf: z.number(),
});

const piece = z.strictObject({
  id: z.string(),
  name: z.string(),
  count: z.int(),
  hand: z.enum(["same", "pair"]),
  leather: z.strictObject({ kind: z.string(), thickness: z.number(), thickest: z.number() }),
  outline: path,
  corners: z.array(z.strictObject({ name: z.string(), at: point })),
  cutouts: z.array(cutout),
  holes: z.array(hole),
  seams: z.array(seam),
  folds: z.array(fold),
  turnBacks: z.array(turnBack),
  zones: z.array(
    z.strictObject({
      id: z.string(),
      kind: z.enum(["skive", "tooling", "keeper", "overlap", "glue", "trim"]),
      outline: path,
      from: z.number().optional(),
      to: z.number().optional(),
      label: z.string(),
    }),
  ),
  marks: z.array(
    z.strictObject({
      id: z.string(),
      kind: z.enum(["crease", "centre", "place", "notch", "clip"]),
      path,
      label: z.string(),
    }),
  ),
  grain: z.number(),
  straight: z.boolean(),
  controls: z.array(z.strictObject({ from: point, to: point, words: z.string() })),
  sizes: z.array(size),
  sections: z.array(z.strictObject({ name: z.string(), newtons: z.number() })),
  edgeLoss: z.number().optional(),
  rough: path.optional(),
  notes: z.array(z.string()),
  extent: z.strictObject({ length: z.number(), width: z.number() }),
  /** Of the outline, less its slots and openings; punched holes are not taken off. */
  area: z.number(),
});

const origin = z.strictObject({
  kind: z.enum(["given", "default", "article", "fact"]),
  source: z.string().optional(),
  where: z.string().optional(),
});
const step = z.strictObject({
  name: z.string(),
  value: z.number(),
  kind: z.string(),
  parts: z.array(z.union([z.string(), size])),
  inputs: z.array(z.string()),
  source: z.string().optional(),
  origin: origin.optional(),
});

const dimension = z.strictObject({
  key: z.string(),
  kind: z.string(),
  value: z.union([z.number(), z.string(), z.boolean()]).optional(),
  origin: z.enum(["given", "default", "article"]),
  least: z.number().optional(),
  most: z.number().optional(),
  means: z.string(),
});

const finding = z.strictObject({
  rule: z.string(),
  severity: z.enum(["error", "caution", "note"]),
  piece: z.string(),
  place: z.string(),
  at: point.optional(),
  message: z.string(),
  value: z.string().optional(),
  limit: z.string().optional(),
  mend: z.string(),
  change: z.strictObject({ dimension: z.string(), value: z.string() }).optional(),
});

const fit = z.strictObject({
  name: z.string(),
  wanted: z.number(),
  shortest: z.number(),
  longest: z.number(),
  wantedIs: z.enum(["as ordered", "as reckoned"]).optional(),
  sizesNote: z.string().optional(),
  rows: z.array(
    z.strictObject({
      near: z.number().optional(),
      off: z.number().optional(),
      measure: z.number(),
      even: z.boolean(),
      sizes: z.array(z.string()),
    }),
  ),
});

const fitting = z.strictObject({
  kind: z.enum(FITTING_KINDS),
  name: z.string(),
  count: z.int(),
  /** The size it is bought by: a buckle's or ring's inside width, a stud's cap. */
  size: z.number().optional(),
  details: z.array(z.string()),
  /** Of screws and rivets: the shank's diameter and the leather that it goes through. */
  through: z.strictObject({ shank: z.number(), stack: z.number() }).optional(),
  /** The customer brings it. */
  brought: z.literal(true).optional(),
  pieces: z.array(z.string()),
  /** Holes, slits and turn-backs that are its own, by piece. */
  serves: z.array(z.strictObject({ piece: z.string(), ids: z.array(z.string()) })),
});

const sheets = z.looseObject({
  paper: z.looseObject({ name: z.string(), width: z.number(), height: z.number() }),
  margin: z.number(),
  overlap: z.number(),
  factor: z.strictObject({ x: z.number(), y: z.number() }),
  plates: z.array(z.looseObject({ id: z.string(), width: z.number(), height: z.number() })),
  sheets: z.array(z.looseObject({ name: z.string(), plate: z.string(), window: box })),
});

/** job.json, format 2: lengths in mm, angles in radians, forces in newtons, areas in mm², volumes
 * in mm³ and litres. */
export const jobSchema = z.strictObject({
  format: z.literal(JOB_FORMAT),
  engine: z.string(),
  units: z.literal("mm"),
  order: z.strictObject({
    file: z.string(),
    text: z.string(),
    article: z.string(),
    forWhom: z.string(),
    units: z.enum(["in", "mm", "cm"]),
  }),
  dimensions: z.array(dimension),
  derivations: z.array(
    z.strictObject({ piece: z.string(), result: z.string(), value: z.number(), steps: z.array(step) }),
  ),
  pieces: z.array(piece),
  joins: z.array(join),
  sizes: z.array(size),
  fit: fit.optional(),
  capacity: capacity.optional(),
  assembly: z.array(assemblyStep).optional(),
  fittings: z.array(fitting).optional(),
  findings: z.array(finding),
  bench,
  sheets,
  totals: z.strictObject({ pieces: z.int(), sheets: z.int(), area: z.number() }),
});

/** The same as JSON Schema (draft 2020-12). */
export const jobJsonSchema = (): Readonly<Record<string, unknown>> =>
  z.toJSONSchema(jobSchema, { io: "input" }) as Readonly<Record<string, unknown>>;
