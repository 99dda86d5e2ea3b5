import type { ArticleDefinition } from "../articles/definition.ts";
import { articles } from "../articles/index.ts";
import { remembered } from "../geometry/remember.ts";
import type { Made } from "../model/article.ts";
import type { Fault } from "../model/finding.ts";
import { fitLines } from "../model/fit.ts";
import type { Told } from "../model/sentence.ts";
import { beginOrder } from "../order/begin.ts";
import type { Order } from "../order/order.ts";
import { articleOf, readOrder } from "../order/read.ts";
import { sayFault } from "../order/say.ts";
import { readTree, type Tree } from "../order/tree.ts";
import { sayCapacity } from "../picture/sheet/article.ts";
import { gravestFirst, remarksOf } from "./findings.ts";
import type { Beside } from "./jobResult.ts";
import type { PageAnswer, PageFault, PageView } from "./pageData.ts";
import { fieldGroups } from "./pageFields.ts";
import { historyOf } from "./pageHistory.ts";
import { pagePieceOf } from "./pagePieces.ts";
import { settableIn } from "./pageSettable.ts";
import { pageSize, sizesByKey, telling } from "./pageSizes.ts";
import { textsIn } from "./pageTexts.ts";
import { shopFor } from "./shopFor.ts";

// What the page shows after every keystroke: no labels, no sheets, no bench, no checks.

/** The fit table or the capacity, in lines. */
function fitOf({ fit, capacity }: Made, { units }: Order): readonly string[] {
  return [...(fit ? fitLines(fit, units) : []), ...(capacity ? sayCapacity(capacity, units) : [])];
}

function viewOf(order: Order, texts: Readonly<Record<string, string>>): PageView {
  const { units, article } = order;
  const { told }: ArticleDefinition & { readonly told?: Told } = article;
  const made = article.make(order.values);
  const settable = settableIn(order);
  const history = historyOf(settable);
  const tell = telling(history, units);
  const sizes = sizesByKey(made, history);
  const feeds = (key: string): readonly string[] => [...history.movedBy(key), ...(sizes.get(key) ?? [])];
  return {
    article: article.name,
    slug: article.slug,
    forWhom: order.forWhom,
    units,
    groups: fieldGroups(settable, { units, texts, feeds }),
    sentences: told?.sentences ?? [],
    pieces: made.pieces.map((p) => pagePieceOf(p, tell)),
    sizes: made.sizes.map((q) => pageSize(q, tell)),
    findings: gravestFirst([...made.findings, ...remarksOf(order)]),
    fit: fitOf(made, order),
  };
}

/** What a new order of an article looks like: its fields stand in for those of an order with faults. */
const newView = remembered((article: ArticleDefinition): PageView | undefined => {
  const text = beginOrder(article);
  const tree = readTree(text);
  const { order } = readOrder(text, article.slug, articles, tree);
  return order && viewOf(order, textsIn(tree, text));
});

const pageFault = (fault: Fault, file: string): PageFault => ({
  key: fault.key,
  ...(fault.place ? { place: fault.place } : {}),
  says: sayFault(fault, file),
});

function faulty(faults: readonly Fault[], file: string, text: string, tree: Tree): PageAnswer {
  const article = articleOf(tree, articles);
  const view = article && newView(article);
  return {
    ok: false,
    faults: faults.map((f) => pageFault(f, file)),
    ...(view ? { view } : {}),
    texts: textsIn(tree, text),
  };
}

/**
 * The quick view of an order's text, or what is wrong with it. Never throws on a text, however odd. `shop`
 * is the shop file that the order names: its faults are told, its prices are for later.
 */
export function pageAnswer(text: string, file: string, options: { readonly shop?: Beside } = {}): PageAnswer {
  const tree = readTree(text);
  const { order, faults } = readOrder(text, file, articles, tree);
  if (!order) return faulty(faults, file, text, tree);
  const shop = shopFor(order, options.shop);
  if (!shop.ok) return faulty(shop.faults, file, text, tree);
  return { ok: true, view: viewOf(order, textsIn(tree, text)) };
}
