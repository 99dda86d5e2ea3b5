import { tellTogether } from "../model/sentence.ts";
import { finishTable, priceTable } from "../trade/benchTables.ts";
import { type ArticleDefinition, section } from "./definition.ts";
import { benchTold } from "./sharedSentences.ts";

// What the bench sheet needs besides the pieces; every article has it, and no piece looks at it.

export const finishSection = section({
  path: "finish",
  label: "finish",
  title: "How it is made and finished",
  table: finishTable,
});

export const priceSection = section({
  path: "price",
  label: "price",
  title: "What this order's price has of its own; rates stand in the shop file",
  table: priceTable,
});

/** The article with the sections of its bench sheet, resolved last; told with them, the lines of an order that stand in no section. */
export const withBench = (article: ArticleDefinition): ArticleDefinition => ({
  ...article,
  sections: [...article.sections, finishSection, priceSection],
  told: tellTogether(article.told, benchTold),
});
