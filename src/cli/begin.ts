import { existsSync, writeFileSync } from "node:fs";
import { basename, dirname, extname, join } from "node:path";
import { articleNamed, beginOrder, beginShop, measuringSheetPdf } from "../job.ts";
import { fonts } from "./fonts.ts";
import { sayWriteError } from "./sayWriteError.ts";
import { type Ending, refused, said } from "./terminal.ts";

export type BeginOptions = { readonly to?: string; readonly sheet?: boolean; readonly paper?: string };

/** What is written in place of an article for a new shop file. */
const SHOP = "shop";

const isThere = (file: string): Ending =>
  refused(`${file} is there already and was left as it is. To mend: choose another name with --to`);

/** Writes a new shop file with every line explained. */
function shop({ to, sheet }: BeginOptions): Ending {
  if (sheet) return refused("--sheet is for an article: a shop file has no measures");
  const text = beginShop();
  if (to === undefined) return said(text.trimEnd());
  if (existsSync(to)) return isThere(to);
  try {
    writeFileSync(to, text, { flag: "wx" });
  } catch (e) {
    return refused(sayWriteError(to, e, "choose another place with --to"));
  }
  return said(
    `Wrote ${to}`,
    `Put your own rates in it, and name it in your orders with a line at the left margin: shop: ${basename(to)}`,
  );
}

/** Writes a new order or shop file with every value explained, and the measuring sheet when asked. */
export async function begin(name: string, options: BeginOptions): Promise<Ending> {
  if (name === SHOP) return shop(options);
  const found = articleNamed(name);
  if (!found.ok) return refused(found.message);
  const text = beginOrder(found.article);
  if (options.to === undefined)
    return options.sheet
      ? refused("--sheet needs --to FILE: the sheet is written beside the order")
      : said(text.trimEnd());
  const sheetFile = join(
    dirname(options.to),
    `${basename(options.to, extname(options.to))}-measuring-sheet.pdf`,
  );
  const there = [options.to, ...(options.sheet ? [sheetFile] : [])].find((f) => existsSync(f));
  if (there !== undefined) return isThere(there);
  const sheet = options.sheet
    ? await measuringSheetPdf(found.article, options.paper ?? "letter", fonts())
    : undefined;
  if (sheet && !sheet.ok) return refused(sheet.message);
  try {
    writeFileSync(options.to, text, { flag: "wx" });
    if (sheet?.ok) writeFileSync(sheetFile, sheet.bytes, { flag: "wx" });
  } catch (e) {
    return refused(sayWriteError(options.to, e, "choose another place with --to"));
  }
  const next = `Change the numbers in ${options.to}, then: whittaw make ${options.to}`;
  return said(
    `Wrote ${options.to}`,
    ...(sheet ? [`Wrote ${sheetFile}: print it and write on it what you measure`] : []),
    next,
  );
}
