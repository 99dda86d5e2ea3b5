import type { DieSettings } from "../die/settings.ts";
import type { Fault } from "../model/finding.ts";
import type { Job } from "../model/job.ts";
import type { Paper } from "../model/sheet.ts";

/** A file that an order names: its text, or why it can't be had. */
export type Beside =
  | { readonly file: string; readonly text: string }
  | { readonly file: string; readonly missing: string };

export type JobOptions = {
  /** Instead of the order's paper. */
  readonly paper?: Paper;
  /** What the bars of the printer check measured, as typed: "179.2x239.5". */
  readonly printed?: string;
  /** Straight straps are printed ends only. */
  readonly endsOnly?: boolean;
  /** The shop file that the order names. */
  readonly shop?: Beside;
};

export type JobResult =
  /** The order can't be read or contradicts itself: nothing was made. */
  | { readonly made: false; readonly status: 1 | 2; readonly faults: readonly Fault[] }
  /** The pieces were made; status 1 when a check found an error. `die` is what the order says of dies. */
  | {
      readonly made: true;
      readonly status: 0 | 1;
      readonly job: Job;
      readonly die: DieSettings;
    };
