import { dirname, isAbsolute, join } from "node:path";
import { type Beside, shopNamedIn } from "../job.ts";
import { readOrderFile } from "./readOrderFile.ts";

/** The order's own message says what to do about it. */
const withoutMend = (message: string): string => message.split(". To mend:")[0]!.split(" To mend:")[0]!;

/** The shop file that an order names, looked for from the order's own folder; undefined when it names none. */
export function shopBeside(orderText: string, orderFile: string): Beside | undefined {
  const named = shopNamedIn(orderText);
  if (named === "") return undefined;
  const path = isAbsolute(named) ? named : join(dirname(orderFile), named);
  const read = readOrderFile(path);
  return read.ok ? { file: named, text: read.text } : { file: named, missing: withoutMend(read.message) };
}
