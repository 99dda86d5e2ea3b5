import { z } from "zod";
import { JOB_FORMAT, type Job, OLDEST_JOB_FORMAT } from "../model/job.ts";
import { jobData } from "../output/json.ts";

// What two jobs are compared by: of a job that was just made, or of a job.json that was kept.

const list = <T extends z.ZodType>(of: T) => z.array(of).readonly();
const size = z.object({ name: z.string(), value: z.number(), kind: z.string() });

const dimension = z.object({
  key: z.string(),
  kind: z.string(),
  value: z.union([z.number(), z.string(), z.boolean()]).optional(),
  origin: z.enum(["given", "default", "article"]),
});
const piece = z.object({
  id: z.string(),
  name: z.string(),
  count: z.number(),
  sizes: list(size),
  extent: z.object({ length: z.number(), width: z.number() }),
  area: z.number(),
});
const step = z.object({
  name: z.string(),
  value: z.number(),
  kind: z.string(),
  parts: list(z.union([z.string(), size])),
  inputs: list(z.string()),
  source: z.string().optional(),
  origin: z.object({ kind: z.string(), source: z.string().optional() }).optional(),
});
const hardwareRow = z.object({
  kind: z.string(),
  name: z.string(),
  count: z.number(),
  spares: z.number(),
  size: z.number().optional(),
  details: list(z.string()),
  shank: z.object({ chosen: z.number().optional() }).optional(),
  brought: z.boolean(),
});
const line = z.object({ what: z.string().optional(), how: z.string().optional(), minor: z.number() });
const price = z.object({
  currency: z.object({ code: z.string(), digits: z.number(), name: z.string() }),
  materials: list(line),
  labour: list(line),
  overhead: line,
  cost: z.number(),
  margin: line,
  rounding: z.number(),
  beforeTax: z.number(),
  tax: line,
  total: z.number(),
});

const kept = z.object({
  engine: z.string(),
  order: z.object({
    file: z.string(),
    text: z.string(),
    article: z.string(),
    forWhom: z.string(),
    units: z.enum(["in", "mm", "cm"]),
  }),
  dimensions: list(dimension),
  derivations: list(
    z.object({ piece: z.string(), result: z.string(), value: z.number(), steps: list(step) }),
  ),
  pieces: list(piece),
  sizes: list(size),
  /** Undefined in a job.json without a bench sheet. */
  bench: z.object({ hardware: list(hardwareRow), price: price.optional() }).optional(),
});

/** As much of a job as a comparison looks at; lengths mm, areas mm², amounts in minor units. */
export type Summary = z.infer<typeof kept>;
export type SummaryPiece = z.infer<typeof piece>;
export type SummaryDimension = z.infer<typeof dimension>;
export type SummaryHardware = z.infer<typeof hardwareRow>;
export type SummaryPrice = z.infer<typeof price>;
export type SummaryDerivation = Summary["derivations"][number];
export type SummaryStep = z.infer<typeof step>;
export type SummarySize = z.infer<typeof size>;

export const summaryOf = (job: Job): Summary => ({ ...jobData(job), bench: job.bench });

export type SummaryRead =
  | { readonly ok: true; readonly summary: Summary }
  | { readonly ok: false; readonly message: string };

const refuse = (message: string): SummaryRead => ({ ok: false, message });
const AGAIN = "make the order again with: whittaw make";

/** Reads a kept job.json, or says in one line what is wrong with it. Never throws. `file` is its name in messages. */
export function readJobJson(text: string, file: string): SummaryRead {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    return refuse(`${file} is broken: it can't be read as JSON. To mend: ${AGAIN}`);
  }
  const head = z.object({ format: z.int(), order: z.unknown() }).safeParse(data);
  if (!head.success)
    return refuse(`${file} is no job.json. To mend: name an order, or a job.json that whittaw make wrote`);
  const { format } = head.data;
  if (format < OLDEST_JOB_FORMAT || format > JOB_FORMAT)
    return refuse(
      `${file} has format ${format}; this version reads formats ${OLDEST_JOB_FORMAT} to ${JOB_FORMAT}. To mend: ${format > JOB_FORMAT ? "use the newer version that wrote it" : AGAIN}`,
    );
  const read = kept.safeParse(data);
  if (read.success) return { ok: true, summary: read.data };
  const where = read.error.issues[0]?.path.join(".") ?? "";
  return refuse(
    `${file} is a job.json with something wrong in it${where === "" ? "" : `, at ${where}`}. To mend: ${AGAIN}`,
  );
}
