import { basename } from "node:path";
import { grade, gradeCsv, makeJob, sayGrade } from "../job.ts";
import { readOrderFile } from "./readOrderFile.ts";
import { shopBeside } from "./readShop.ts";
import { type Ending, refused } from "./terminal.ts";

export type GradeWords = { readonly sizes?: string; readonly csv?: boolean; readonly json?: boolean };

/** Makes one order in several sizes and prints what differs between them; nothing is written. */
export function gradeOrder(file: string, { sizes, csv, json }: GradeWords): Ending {
  if (csv && json) return refused("--csv and --json are two forms of one table. To mend: choose one");
  const read = readOrderFile(file);
  if (!read.ok) return refused(read.message);
  const shop = shopBeside(read.text, file);
  const result = grade(read.text, file, sizes, (text) => makeJob(text, basename(file), shop ? { shop } : {}));
  if (!result.ok) return { status: result.status, out: [], err: result.messages };
  const { status, grade: table } = result;
  const out = json ? [JSON.stringify(table, null, 1)] : csv ? [gradeCsv(table).trimEnd()] : sayGrade(table);
  // A table for a program says nothing of what is wrong: people read it beside.
  const failed = table.columns.filter((c) => c.state !== "made");
  const err = json || !csv ? [] : failed.map((c) => `${c.size} ${c.state}: ${c.reasons.join("; ")}`);
  return { status, out, err };
}
