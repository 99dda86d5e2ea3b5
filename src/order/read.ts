import type { ArticleDefinition } from "../articles/definition.ts";
import type { Fault } from "../model/finding.ts";
import { nearestWord } from "../model/words.ts";
import { branchesOf } from "./branch.ts";
import { together } from "./faults.ts";
import type { Order, OrderSection } from "./order.ts";
import { readTop } from "./read-top.ts";
import { type Solved, solveSections } from "./sections.ts";
import { NOTHING_GIVEN, sortEntries } from "./sort.ts";
import { surely } from "./surely.ts";
import { topTable } from "./top.ts";
import { readTree, type Tree } from "./tree.ts";

/** What reading an order gives: the order, or what is wrong with it. */
export type OrderRead = { readonly faults: readonly Fault[]; readonly order?: Order };

/** The article that is named; of a misspelt name the one that was meant, so that all faults come at once. */
export function articleOf(tree: Tree, articles: readonly ArticleDefinition[]): ArticleDefinition | undefined {
  const value = tree.entries?.find((e) => e.key === "article")?.value;
  if (value?.kind !== "text") return undefined;
  const names = articles.map((a) => a.name);
  const name = names.includes(value.text) ? value.text : nearestWord(value.text, names);
  return articles.find((a) => a.name === name);
}

const isRangeFault = (fault: Fault): boolean => fault.code === "range" || fault.code === "contradiction";

const asSection = ({ section, resolution }: Solved): OrderSection => ({
  path: section.path,
  title: section.title,
  dimensions: resolution.resolved,
});

/**
 * Reads an order's text: all faults at once, each with its place, or the order with every dimension's
 * value. Never throws on a text, however odd. `file` is the name that messages show; `tree` is the text as
 * `readTree` gives it, for whoever has it already.
 */
export function readOrder(
  text: string,
  file: string,
  articles: readonly ArticleDefinition[],
  tree: Tree = readTree(text),
): OrderRead {
  if (!tree.entries) return { faults: together(tree.faults) };
  const table = topTable(articles.map((a) => a.name));
  const article = articleOf(tree, articles);
  // Without an article nobody knows its sections: only the top level is judged then.
  const known = article ? tree.entries : tree.entries.filter((e) => Object.hasOwn(table, e.key));
  const sorted = sortEntries(known, branchesOf(table, article));
  const top = readTop(table, sorted.sections.get("") ?? NOTHING_GIVEN, file);
  const solved = article && solveSections(article, sorted.sections, top.units ?? "in", file);
  // Where it isn't known what a bare number means, no range can be judged.
  const judged = (solved?.faults ?? []).filter((f) => top.units !== undefined || !isRangeFault(f));
  const later = [...sorted.faults, ...top.faults, ...judged].filter((f) => surely(f, tree));
  const faults = together([...tree.faults, ...later]);
  if (faults.length > 0 || !solved || !article || !top.settled) return { faults };
  const order: Order = {
    file,
    text,
    article,
    ...top.settled,
    sections: [{ path: "", title: "", dimensions: top.dimensions }, ...solved.solved.map(asSection)],
    values: solved.values,
    remarks: solved.solved.flatMap(({ resolution }) => resolution.remarks),
  };
  return { faults, order };
}
