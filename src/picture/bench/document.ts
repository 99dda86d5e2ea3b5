// A paper in words and tables, whatever it is written as: pages are drawn of it, and Markdown is written.

/** A column of a table; figures stand to the right. */
export type Column = { readonly title: string; readonly align: "left" | "right" };

/** A table; one whose titles are all empty has no head. */
export type TableBlock = {
  readonly kind: "table";
  readonly columns: readonly Column[];
  /** Each row has a cell for every column. */
  readonly rows: readonly (readonly string[])[];
  /** The row of sums. */
  readonly foot?: readonly string[];
  /** A remark below the table. */
  readonly note?: string;
};

/** A step of work, to be ticked off. */
export type StepItem = {
  readonly text: string;
  /** Below it: tool, setting, pieces; "" when there is nothing to say. */
  readonly detail: string;
  /** Beside it, as `12 min`; "" when the time isn't known. */
  readonly time: string;
};

export type DocumentBlock =
  | {
      readonly kind: "heading";
      readonly text: string /** Begins a page of its own. */;
      readonly newPage?: true;
    }
  | { readonly kind: "text"; readonly text: string }
  | TableBlock
  | { readonly kind: "steps"; readonly steps: readonly StepItem[] }
  | { readonly kind: "list"; readonly items: readonly string[] }
  /** Lines to write on by hand, each after its word. */
  | { readonly kind: "blanks"; readonly labels: readonly string[] };

export type BenchDocument = {
  readonly title: string;
  readonly subtitle: readonly string[];
  /** Size of its type when it is drawn, mm. */
  readonly type: number;
  /** What stands at the head of every page. */
  readonly head: string;
  readonly blocks: readonly DocumentBlock[];
};

export const left = (title: string): Column => ({ title, align: "left" });
export const right = (title: string): Column => ({ title, align: "right" });

const NONE: DocumentBlock = { kind: "text", text: "None." };

/** A heading and a table under it; without rows it says that there are none. */
export const tableUnder = (
  heading: string,
  table: Omit<TableBlock, "kind">,
  none: DocumentBlock = NONE,
): readonly DocumentBlock[] => [
  { kind: "heading", text: heading },
  table.rows.length === 0 ? none : { kind: "table", ...table },
];
