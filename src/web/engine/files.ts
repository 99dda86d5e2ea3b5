import {
  dieFiles,
  diesOf,
  type Fonts,
  type JobFile,
  type JobOptions,
  jobFiles,
  makeJob,
  piecesNamed,
  readPaper,
  sayFault,
  sayFinding,
  shopNamedIn,
} from "../../job.ts";
import type { FileKind, MadeFile, Printing, Said } from "./engine.ts";

// The files of an order, as the command line makes them of the same order by the same functions.

export type FilesAsked = Printing & { readonly pieces?: readonly string[] };

type Made = Extract<ReturnType<typeof makeJob>, { readonly made: true }>;
type Shop = NonNullable<JobOptions["shop"]>;

const refuse = (message: string): { readonly ok: false; readonly message: string } => ({
  ok: false,
  message,
});

/** The shop file that an order names, as far as it was opened beside it. */
export function shopOf(text: string, shop: string | undefined): Shop | undefined {
  const file = shopNamedIn(text);
  if (file === "") return undefined;
  return shop === undefined ? { file, missing: `${file} was not opened` } : { file, text: shop };
}

/** Paper and measured bars in the engine's own terms. */
export function printingOptions({ paper, printed }: Printing): Said<JobOptions> {
  const read = paper === undefined ? undefined : readPaper(paper);
  if (read && !read.ok)
    return refuse(`paper: ${read.problem}; allowed: ${read.allowed}. To mend: ${read.mend}`);
  return {
    ok: true,
    value: { ...(read ? { paper: read.paper } : {}), ...(printed === undefined ? {} : { printed }) },
  };
}

/** A made order, or why it can't be made. */
function made(text: string, file: string, options: JobOptions): Said<Made> {
  const result = makeJob(text, file, options);
  return result.made
    ? { ok: true, value: result }
    : refuse(result.faults.map((f) => sayFault(f, file)).join("\n"));
}

/** Errors stop the printing, as they do on the command line. */
function errorsOf({ job }: Made): Said<never> | undefined {
  const errors = job.findings.filter((f) => f.severity === "error");
  return errors.length === 0
    ? undefined
    : refuse(["The order has errors; mend them first.", ...errors.map(sayFinding)].join("\n"));
}

const WHICH: Readonly<Record<Exclude<FileKind, "die">, (path: string) => boolean>> = {
  template: (path) => path.startsWith("template-"),
  pieces: (path) => path.startsWith("pieces/"),
  bench: (path) => path.startsWith("bench-sheet."),
  quote: (path) => path.startsWith("quote."),
  job: (path) => path === "job.json",
  "printer check": (path) => path.startsWith("printer-check-"),
  all: () => true,
};

const encoder = new TextEncoder();

const asMade = ({ path, data }: JobFile): MadeFile => ({
  path,
  // What is written as bytes was made here and owns its buffer.
  bytes: typeof data === "string" ? encoder.encode(data) : new Uint8Array(data),
});

/** The dies' files, in a folder of their own; those of pieces with errors only if they are asked for by name. */
async function dies(
  { job, die }: Made,
  names: readonly string[] | undefined,
  fonts: Fonts,
): Promise<Said<readonly JobFile[]>> {
  const found = piecesNamed(job, names ?? job.made.pieces.map((p) => p.id));
  if (!found.ok) return found;
  const files: JobFile[] = [];
  for (const piece of found.pieces) {
    const sides = diesOf(job, die, piece);
    const errors = sides.flatMap((s) => s.findings).filter((f) => f.severity === "error");
    if (errors.length === 0) files.push(...(await dieFiles(job, sides, fonts)));
    else if (names !== undefined)
      return refuse([`The die of the ${piece.name} has errors.`, ...errors.map(sayFinding)].join("\n"));
  }
  return { ok: true, value: files.map((f) => ({ ...f, path: `die/${f.path}` })) };
}

const NONE: Partial<Record<FileKind, string>> = {
  quote:
    "There is no quote, for the order has no whole price. To mend: open the shop file that the order names",
  die: "No piece has a die without errors. To mend: ask for the die of one piece to see them",
};

/**
 * The files of one kind; paths count from the order's folder, as the command line lays them there: pieces/,
 * die/. "all" is everything with the order itself. A die is drawn for the die maker's printer, not this one:
 * it takes the paper alone.
 */
export async function filesOf(
  text: string,
  file: string,
  shop: string | undefined,
  kind: FileKind,
  asked: FilesAsked,
  fonts: () => Promise<Fonts>,
): Promise<Said<readonly MadeFile[]>> {
  const printing = printingOptions(asked);
  if (!printing.ok) return printing;
  const beside = shopOf(text, shop);
  const options = { ...printing.value, ...(beside ? { shop: beside } : {}) };
  const result = made(text, file, options);
  if (!result.ok) return result;
  const errors = kind === "printer check" ? undefined : errorsOf(result.value);
  if (errors) return errors;
  const embedded = await fonts();
  const files: JobFile[] = [];
  if (kind !== "die")
    files.push(...(await jobFiles(result.value.job, embedded)).filter((f) => WHICH[kind](f.path)));
  if (kind === "pieces" && asked.pieces) {
    const found = piecesNamed(result.value.job, asked.pieces);
    if (!found.ok) return found;
    const paths = found.pieces.map((p) => `pieces/${p.id}.svg`);
    return { ok: true, value: files.filter((f) => paths.includes(f.path)).map(asMade) };
  }
  if (kind === "die" || kind === "all") {
    const { printed: _, ...unprinted } = options;
    const forDies = made(text, file, unprinted);
    if (!forDies.ok) return forDies;
    const drawn = await dies(forDies.value, kind === "die" ? asked.pieces : undefined, embedded);
    if (!drawn.ok) return drawn;
    files.push(...drawn.value);
  }
  if (kind === "all") files.push({ path: file, data: text });
  return files.length === 0
    ? refuse(NONE[kind] ?? "There is nothing to make")
    : { ok: true, value: files.map(asMade) };
}
