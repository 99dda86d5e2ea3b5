import type { Made } from "./article.ts";
import type { Bench } from "./bench.ts";
import type { Derivation } from "./derivation.ts";
import type { Finding } from "./finding.ts";
import type { ResolvedDimension } from "./resolve.ts";
import type { Units } from "./say.ts";
import type { Layout } from "./sheet.ts";
import type { Shop } from "./shop.ts";

/** Grows when job.json changes its shape: 2 since it holds the bench sheet. */
export const JOB_FORMAT = 2;
/** The oldest job.json that can still be compared and made again. */
export const OLDEST_JOB_FORMAT = 1;
/** Equal to the package's version; a test holds them together. */
export const ENGINE_VERSION = "0.1.0";

/** What was ordered, as far as the job shows it. */
export type JobOrder = {
  readonly file: string;
  readonly text: string;
  readonly article: string;
  readonly forWhom: string;
  readonly units: Units;
};

/** What an order says of its finish; "" where it is left blank. */
export type Finish = { readonly dye: string; readonly edges: string; readonly thread: string };

/** An order made: everything that outputs need, plain data. */
export type Job = {
  readonly order: JobOrder;
  readonly dimensions: readonly ResolvedDimension[];
  readonly made: Made;
  readonly derivations: readonly Derivation[];
  readonly findings: readonly Finding[];
  readonly layout: Layout;
  readonly bench: Bench;
  /** How many are ordered, how they are finished, and the shop whose rates they are priced by. */
  readonly quantity: number;
  readonly finish: Finish;
  readonly shop: Shop;
};
