// A paper as Markdown with the tables of GFM; the library escapes every text.
import { gfmTableToMarkdown } from "mdast-util-gfm-table";
import { toMarkdown, type Unsafe } from "mdast-util-to-markdown";
import type { BenchDocument, DocumentBlock, TableBlock } from "../picture/bench/document.ts";
import { steady } from "../picture/words.ts";

// The library's own tree, by its types.
type Nodes = Parameters<typeof toMarkdown>[0];
type Named<Name extends Nodes["type"]> = Extract<Nodes, { readonly type: Name }>;
type RootContent = Named<"root">["children"][number];
type PhrasingContent = Named<"paragraph">["children"][number];

/**
 * What some readers take for more than letters beside CommonMark and tables: text struck out, formulas, and
 * addresses that would become links (from memory).
 */
const ALSO_UNSAFE: readonly Unsafe[] = [
  { character: "~", inConstruct: "phrasing" },
  { character: "$", inConstruct: "phrasing" },
  { character: "@", before: "[+\\-.\\w]", after: "[\\-.\\w]", inConstruct: "phrasing" },
  { character: ".", before: "[Ww]", after: "[\\-.\\w]", inConstruct: "phrasing" },
  { character: ":", before: "[ps]", after: "\\/", inConstruct: "phrasing" },
];

/** On one line, without what is not seen; spaces at the ends or several together would be dropped by a reader. */
const tidy = (text: string): string => steady(text).replace(/\s+/gu, " ").trim();

const plain = (text: string): PhrasingContent[] => (text === "" ? [] : [{ type: "text", value: text }]);
const strong = (text: string): PhrasingContent[] =>
  text === "" ? [] : [{ type: "strong", children: plain(text) }];

const paragraph = (text: string): readonly RootContent[] =>
  tidy(text) === "" ? [] : [{ type: "paragraph", children: plain(tidy(text)) }];

const heading = (text: string, depth: 1 | 2): RootContent => ({
  type: "heading",
  depth,
  children: plain(tidy(text)),
});

const tableRow = (
  { columns }: TableBlock,
  cells: readonly string[],
  look: (text: string) => PhrasingContent[] = plain,
): Named<"tableRow"> => ({
  type: "tableRow",
  children: columns.map((_, i) => ({ type: "tableCell", children: look(tidy(cells[i] ?? "")) })),
});

function tableNodes(table: TableBlock): readonly RootContent[] {
  const titles = table.columns.map((c) => c.title);
  const node: Named<"table"> = {
    type: "table",
    align: table.columns.map((c) => c.align),
    children: [
      tableRow(table, titles),
      ...table.rows.map((cells) => tableRow(table, cells)),
      ...(table.foot ? [tableRow(table, table.foot, strong)] : []),
    ],
  };
  return [node, ...paragraph(table.note ?? "")];
}

function list(items: readonly string[], ordered: boolean): readonly RootContent[] {
  if (items.length === 0) return [];
  const node: Named<"list"> = {
    type: "list",
    ordered,
    spread: false,
    children: items.map((item) => ({
      type: "listItem",
      spread: false,
      children: [{ type: "paragraph", children: plain(tidy(item)) }],
    })),
  };
  return [node];
}

/** A line to write on, in a text. */
const BLANK = "…".repeat(15);

/** What is said one after the other: `Groove. Groover: 3 mm. 12 min` */
const inARow = (parts: readonly string[]): string =>
  parts
    .map((p) => tidy(p).replace(/\.$/, ""))
    .filter((p) => p !== "")
    .join(". ");

function nodesFor(block: DocumentBlock): readonly RootContent[] {
  switch (block.kind) {
    case "heading":
      return [...(block.newPage ? [{ type: "thematicBreak" } as const] : []), heading(block.text, 2)];
    case "text":
      return paragraph(block.text);
    case "table":
      return tableNodes(block);
    case "steps":
      return list(
        block.steps.map((s) => `${inARow([s.text, s.detail, s.time])}.`),
        true,
      );
    case "list":
      return list(block.items, false);
    case "blanks":
      return block.labels.flatMap((label) => paragraph(`${label}: ${BLANK}`));
  }
}

/**
 * The paper as Markdown: texts are escaped, tables are GFM's, steps an ordered list. Characters that only
 * steer others are dropped, and white space is one space, as in a drawing. The same paper gives the same text.
 */
export function markdown(paper: BenchDocument): string {
  const children = [
    heading(paper.title, 1),
    ...paper.subtitle.flatMap(paragraph),
    ...paper.blocks.flatMap(nodesFor),
  ];
  const extensions = [gfmTableToMarkdown(), { unsafe: [...ALSO_UNSAFE] }];
  return toMarkdown({ type: "root", children }, { extensions, bullet: "-", rule: "-" });
}
