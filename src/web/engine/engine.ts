import type { Finding, PageAnswer, PagePicture } from "../../job.ts";

/** Printer and paper as the page knows them; kept on the device. */
export type Printing = {
  /** "letter"; undefined: the order's own. */
  readonly paper?: string;
  /** What the bars of the printer check measured, "179.2x239.5". */
  readonly printed?: string;
};

/** Its path counts from the order's folder, as the command line lays it there: "pieces/cheek.svg", "die/…". */
export type MadeFile = { readonly path: string; readonly bytes: Uint8Array<ArrayBuffer> };

/** What can be had: each with the files' names that the command line gives them. */
export type FileKind = "template" | "pieces" | "bench" | "quote" | "job" | "printer check" | "die" | "all";

export type ArticleName = { readonly name: string; readonly slug: string; readonly means: string };

export type Said<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly message: string };

/** The engine, in a worker of its own. Every call is answered; of `look` only the latest one is. */
export type Engine = {
  articles(): Promise<readonly ArticleName[]>;
  /** A new order of that article: an explained file with sample values. */
  begin(slug: string): Promise<string>;
  /** The quick view of a text; undefined when a later call overtook it. */
  look(text: string, file: string, shop: string | undefined): Promise<PageAnswer | undefined>;
  /** All that the checks find on the pieces: `look` tells only what is known at once. Ask right after it; what a later call overtook is not ok. */
  findings(text: string, file: string, shop: string | undefined): Promise<Said<readonly Finding[]>>;
  /** The text with one value set, or taken out; comments and spacing elsewhere stay to the byte. */
  edit(text: string, key: string, value: string | undefined): Promise<Said<string>>;
  /** The text with other units; lengths written as bare numbers get their unit first, so that none changes. */
  units(text: string, units: "in" | "mm" | "cm"): Promise<Said<string>>;
  /** A piece with its labels, as its file has it. Slow: ask when the maker pauses. */
  piece(text: string, file: string, id: string): Promise<Said<PagePicture>>;
  /** The sheets as they will print. */
  sheets(text: string, file: string, printing: Printing): Promise<Said<readonly PagePicture[]>>;
  /** Turn-backs seen from the side; a bag's seams laid end to end. */
  folded(text: string, file: string): Promise<Said<readonly PagePicture[]>>;
  /**
   * Files, byte for byte those of the command line for the same order. `pieces` chooses among the pieces and
   * the dies; "all" holds the order itself too. An order with errors has only its printer check.
   */
  files(
    text: string,
    file: string,
    shop: string | undefined,
    kind: FileKind,
    options: Printing & { readonly pieces?: readonly string[] },
  ): Promise<Said<readonly MadeFile[]>>;
};
