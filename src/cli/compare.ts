import { existsSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import {
  type Beside,
  type CompareOptions,
  compareJobs,
  makeJob,
  readJobJson,
  type Side,
  sayComparison,
  sayFault,
  shopNamedIn,
  summaryOf,
} from "../job.ts";
import { readKept } from "./readKept.ts";
import { readOrderFile } from "./readOrderFile.ts";
import { shopBeside } from "./readShop.ts";
import { type Ending, refused } from "./terminal.ts";

/** One side of a comparison; status 1 and a word when its order was made and has errors. */
type SideRead =
  | { readonly ok: true; readonly side: Side; readonly status: 0 | 1 }
  | { readonly ok: false; readonly ending: Ending };

const isKept = (file: string): boolean => file.toLowerCase().endsWith(".json");

/** An order's text made, under the name that messages show. */
function made(text: string, file: string, name: string, shop: Beside | undefined): SideRead {
  const result = makeJob(text, basename(file), shop ? { shop } : {});
  if (result.made) return { ok: true, side: { name, summary: summaryOf(result.job) }, status: result.status };
  const err = [`${name} can't be compared:`, ...result.faults.map((f) => `  ${sayFault(f, file)}`)];
  return { ok: false, ending: { status: result.status, out: [], err } };
}

function read(file: string): SideRead {
  if (!isKept(file)) {
    const text = readOrderFile(file);
    return text.ok
      ? made(text.text, file, file, shopBeside(text.text, file))
      : { ok: false, ending: refused(text.message) };
  }
  const text = readKept(file);
  if (!text.ok) return { ok: false, ending: refused(text.message) };
  const kept = readJobJson(text.text, file);
  if (!kept.ok) return { ok: false, ending: refused(kept.message) };
  return { ok: true, side: { name: file, summary: kept.summary }, status: 0 };
}

/** Says what differs between two orders, or between a kept job.json and its order made again. */
export function compare(before: string, after: string | undefined, json: boolean): Ending {
  if (after === undefined && !isKept(before))
    return refused(
      `${before} has nothing to be compared with. To mend: name a second order, or the job.json of an earlier one`,
    );
  const first = read(before);
  if (!first.ok) return first.ending;
  if (after !== undefined) {
    const second = read(after);
    return second.ok ? said(first, second, {}, json) : second.ending;
  }
  const { text, file } = first.side.summary.order;
  const second = made(text, file, `the order kept in this ${basename(before)}, made again`, undefined);
  if (!second.ok) return second.ending;
  const notes = besides(before, file, text);
  return said(first, second, { again: true, withoutShop: shopNamedIn(text) !== "", notes }, json);
}

/** The order files of that name in the working folder and beside the job.json. */
const orderFiles = (kept: string, name: string): readonly string[] =>
  [...new Set([name, join(dirname(kept), name)])].filter((f) => existsSync(f));

/** An order file was not looked at: how to compare with it, and that its text is another one now. */
function besides(kept: string, orderFile: string, text: string): readonly string[] {
  // The name stands in anybody's text: it leads to no other folder.
  const name = basename(orderFile);
  const files = orderFiles(kept, name);
  const other = files.filter((f) => {
    const now = readOrderFile(f);
    return now.ok && now.text !== text;
  });
  const how = (f: string): string => `whittaw compare ${kept} ${f}`;
  if (other.length > 0)
    return other.map((f) => `${f} is not the order kept here any more. To compare with it: ${how(f)}`);
  return [`No order file was looked at. To compare with one, name both: ${how(files[0] ?? name)}`];
}

type Made = Extract<SideRead, { readonly ok: true }>;

function said(first: Made, second: Made, options: CompareOptions, json: boolean): Ending {
  const comparison = compareJobs(first.side, second.side, options);
  const faulty = [first, second].filter((s) => s.status !== 0);
  return {
    status: faulty.length > 0 ? 1 : 0,
    out: json ? [JSON.stringify(comparison, null, 1)] : sayComparison(comparison),
    err: faulty.map((s) => `${s.side.name} has errors, which whittaw check shows`),
  };
}
