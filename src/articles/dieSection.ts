import { tellTogether } from "../model/sentence.ts";
import { dieTable } from "../trade/dieTable.ts";
import { type ArticleDefinition, section } from "./definition.ts";
import { dieTold } from "./sharedSentences.ts";

/** What a steel cutting die is ordered by; every article has it, and no piece looks at it. */
export const dieSection = section({
  path: "die",
  label: "die",
  title: "Steel cutting dies: what their maker bends, what your press can do, what stands on their drawings",
  table: dieTable,
});

/** The article with the section of its dies, resolved and told last. */
export const withDie = (article: ArticleDefinition): ArticleDefinition => ({
  ...article,
  sections: [...article.sections, dieSection],
  told: tellTogether(article.told, dieTold),
});
