import type { Job } from "../model/job.ts";
import type { Currency } from "../model/money.ts";
import type { Units } from "../model/say.ts";
import { editOrder } from "../order/edit.ts";
import { sayFault } from "../order/say.ts";
import { type GradeSize, noSizes, sizesNamed, sizesOf } from "./gradeSizes.ts";
import type { JobResult } from "./jobResult.ts";
import { articleNamed } from "./named.ts";
import { isSame } from "./same.ts";
import { valueAt } from "./valueAt.ts";

// One article across sizes: the same order with other measures, made again for each.

/** One size of one piece in every size of the article; undefined where it isn't there. */
export type GradeRow = {
  /** "" is the whole article. */
  readonly piece: string;
  readonly name: string;
  readonly kind: string;
  /** By column; mm, radians, mm² or bare. */
  readonly values: readonly (number | undefined)[];
};

/** What the holes of a made size reach, and the range it is sold as; both measured as the range was, mm. */
export type Reach = {
  readonly shortest: number;
  readonly longest: number;
  readonly from: number;
  readonly to: number;
};

export type GradeColumn = {
  readonly size: string;
  readonly from: string;
  readonly measures: Readonly<Record<string, string>>;
  readonly state: "made" | "has errors" | "contradicts itself";
  /** The errors, or what contradicts. */
  readonly reasons: readonly string[];
  readonly reach?: Reach;
  /** How its measure over the poll is taken, where the sizes of the table differ in that. */
  readonly measured?: string;
  /** Of an order with a shop: what it costs, in minor units of the currency; incomplete without all rates. */
  readonly price?: {
    readonly total: number;
    readonly currency: Currency;
    readonly incomplete: boolean;
    /** Of so many. */
    readonly quantity: number;
  };
};

export type Grade = {
  readonly file: string;
  readonly article: string;
  readonly units: Units;
  readonly columns: readonly GradeColumn[];
  /** What differs between the sizes. */
  readonly rows: readonly GradeRow[];
  /** What is the same in all of them. */
  readonly same: readonly GradeRow[];
  /** Measures of the order that some size leaves as they are: "measures.ear-base" and the sizes. */
  readonly kept: readonly { readonly measure: string; readonly sizes: readonly string[] }[];
  /** Lengths of pieces that the order gives, which no size changes. */
  readonly fixed: readonly string[];
  /** True where sizes are taken from mouth corner to mouth corner and the order doesn't say the bit's rise. */
  readonly riseUnknown: boolean;
};

export type GradeResult =
  | { readonly ok: true; readonly status: 0 | 1; readonly grade: Grade }
  | { readonly ok: false; readonly status: 1 | 2; readonly messages: readonly string[] };

const MEASURES = "measures.";

/** A size's setting by its path in an order: a bare name is a measure. */
const pathOf = (key: string): string => (key.includes(".") ? key : MEASURES + key);

/** The order's text with a size's measures; undefined when one can't be written in its place. */
function textOf(text: string, size: GradeSize): string | undefined {
  const measures = Object.entries(size.measures);
  const edited = measures.reduce((t, [key, value]) => editOrder(t, pathOf(key), value), text);
  const written = measures.every(([key, value]) => valueAt(edited, pathOf(key)) === value);
  return written ? edited : undefined;
}

type MadeSize = { readonly size: GradeSize; readonly column: GradeColumn; readonly job?: Job };

function makeSize(text: string, file: string, size: GradeSize, make: (text: string) => JobResult): MadeSize {
  const about = { size: size.name, from: size.from, measures: size.measures };
  const graded = textOf(text, size);
  if (graded === undefined) {
    const reasons = ["its measures can't be written into this order: write them into it by hand"];
    return { size, column: { ...about, state: "contradicts itself", reasons } };
  }
  const result = make(graded);
  if (!result.made) {
    // The places are those of a text that nobody sees.
    const reasons = result.faults.map(({ place: _, ...f }) => sayFault(f, file));
    return { size, column: { ...about, state: "contradicts itself", reasons } };
  }
  const { job } = result;
  const errors = job.findings.filter((f) => f.severity === "error");
  return {
    size,
    job,
    column: {
      ...about,
      state: errors.length > 0 ? "has errors" : "made",
      reasons: errors.map((f) => `${f.piece === "" ? "" : `${f.piece}: `}${f.message}`),
      ...reachOf(job, size),
      ...priceOf(job),
    },
  };
}

function priceOf({ bench: { price }, quantity }: Job): Pick<GradeColumn, "price"> {
  if (!price) return {};
  const { total, currency, incomplete } = price;
  return { price: { total, currency, incomplete, quantity } };
}

const MEASURED_FROM = `${MEASURES}measured-from`;

/** Columns with the way each was measured, where that isn't the same in all. */
function toldApart(sizes: readonly MadeSize[]): readonly GradeColumn[] {
  const ways = sizes.map(({ job }) => job?.dimensions.find((d) => d.key === MEASURED_FROM)?.value);
  const known = new Set(ways.filter((way) => typeof way === "string"));
  return sizes.map(({ column }, i) => {
    const way = ways[i];
    return known.size < 2 || typeof way !== "string" ? column : { ...column, measured: `${way} to ${way}` };
  });
}

const riseOf = (job: Job): number | undefined => {
  const value = job.dimensions.find((d) => d.key === `${MEASURES}rise`)?.value;
  return typeof value === "number" ? value : undefined;
};

/** The fit table's ends, measured from mouth corner to mouth corner as the range was. */
function reachOf(job: Job, { range }: GradeSize): { readonly reach?: Reach } {
  const { fit } = job.made;
  if (!fit || !range) return {};
  const more = 2 * (riseOf(job) ?? 0);
  return { reach: { shortest: fit.shortest + more, longest: fit.longest + more, ...range } };
}

type Sized = { readonly piece: string; readonly name: string; readonly kind: string; readonly value: number };

const sizedIn = (job: Job): readonly Sized[] => [
  ...job.made.sizes.map((q) => ({ piece: "", name: q.name ?? "", kind: q.kind, value: q.value })),
  ...job.made.pieces.flatMap((p) =>
    p.sizes.map((q) => ({ piece: p.id, name: q.name ?? "", kind: q.kind, value: q.value })),
  ),
];

/** Every size of every piece that any column has, in the order of the first that has it. */
function rowsOf(jobs: readonly (Job | undefined)[]): readonly GradeRow[] {
  const columns = jobs.map((job) => (job ? sizedIn(job) : []));
  const heads = new Map<string, Sized>();
  for (const s of columns.flat()) {
    const key = JSON.stringify([s.piece, s.name]);
    if (!heads.has(key)) heads.set(key, s);
  }
  return [...heads.values()].map(({ piece, name, kind }) => ({
    piece,
    name,
    kind,
    values: columns.map((c) => c.find((s) => s.piece === piece && s.name === name)?.value),
  }));
}

/** Whether a row has one value in every column that was made. */
const isEven = (row: GradeRow, made: readonly boolean[]): boolean => {
  const values = row.values.filter((_, i) => made[i]);
  const [first] = values;
  return values.every((v) => v !== undefined && first !== undefined && isSame(v, first, row.kind));
};

const givenLengths = (job: Job, prefix: string): readonly string[] =>
  job.dimensions
    .filter((d) => d.key.startsWith(prefix) && d.origin === "given" && d.kind === "length")
    .map((d) => d.key);

/**
 * Makes an order in every size that is asked for, "all" unless said: parted by commas. `make` makes a text
 * of the order; `file` is its name in messages.
 */
export function grade(
  text: string,
  file: string,
  names: string | undefined,
  make: (text: string) => JobResult,
): GradeResult {
  const base = make(text);
  if (!base.made)
    return { ok: false, status: base.status, messages: base.faults.map((f) => sayFault(f, file)) };
  const refuse = (message: string): GradeResult => ({ ok: false, status: 2, messages: [message] });
  const found = articleNamed(base.job.order.article);
  if (!found.ok) return refuse(found.message);
  const all = sizesOf(found.article, base.job.shop);
  if (all.length === 0) return refuse(noSizes(found.article, base.job.shop));
  const chosen = sizesNamed(all, names);
  if (!chosen.ok) return refuse(chosen.message);
  const sizes = chosen.sizes.map((size) => makeSize(text, file, size, make));
  const made = sizes.map((s) => s.job !== undefined);
  const rows = rowsOf(sizes.map((s) => s.job));
  const status = sizes.every((s) => s.column.state === "made") ? 0 : 1;
  return {
    ok: true,
    status,
    grade: {
      file,
      article: found.article.name,
      units: base.job.order.units,
      columns: toldApart(sizes),
      rows: rows.filter((r) => !isEven(r, made)),
      same: rows.filter((r) => isEven(r, made)),
      kept: keptMeasures(base.job, chosen.sizes),
      fixed: givenLengths(base.job, "pieces.").filter((path) =>
        chosen.sizes.some((s) => !Object.hasOwn(s.measures, path)),
      ),
      riseUnknown: chosen.sizes.some((s) => s.range) && riseOf(base.job) === undefined,
    },
  };
}

/** The order's own measures that a size lacks. */
const keptMeasures = (job: Job, sizes: readonly GradeSize[]): Grade["kept"] =>
  givenLengths(job, MEASURES)
    .map((measure) => ({
      measure,
      sizes: sizes
        .filter((s) => !Object.hasOwn(s.measures, measure.slice(MEASURES.length)))
        .map((s) => s.name),
    }))
    .filter((kept) => kept.sizes.length > 0);
