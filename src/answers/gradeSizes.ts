import type { ArticleDefinition } from "../articles/definition.ts";
import { headstall } from "../articles/headstall.ts";
import { orderKey } from "../model/dimension.ts";
import type { Shop } from "../model/shop.ts";
import { nearestWord } from "../model/words.ts";
import { measuresOf } from "../order/shopSections.ts";
import { measuredText } from "../order/value-text.ts";
import { HORSE_SIZES, HORSE_SIZES_SOURCE } from "../trade/horseSizes.ts";
import { printLengthShort } from "../units/index.ts";
import { quote } from "../units/quote.ts";

/** A size that an article can be made in: its measures as an order has them, by their keys. */
export type GradeSize = {
  readonly name: string;
  readonly measures: Readonly<Record<string, string>>;
  /** Where it comes from, in one line. */
  readonly from: string;
  /** Of a size that is sold as a range: the measures over the poll, mouth corner to mouth corner, mm. */
  readonly range?: { readonly from: number; readonly to: number };
};

/** Headstall sizes read at a source; each is made at the middle of its range, measured as the source does. */
const headstallSizes: readonly GradeSize[] = HORSE_SIZES.map(({ name, from, to }) => ({
  name,
  measures: {
    "over-poll": measuredText((from + to) / 2, "length"),
    "measured-from": "mouth corner",
  },
  from: `the middle of ${printLengthShort(from, "in")} to ${printLengthShort(to, "in")}; ${HORSE_SIZES_SOURCE}`,
  range: { from, to },
}));

/** All sizes of an article: the workshop's own first, then those read at a source. */
export function sizesOf(article: ArticleDefinition, shop: Shop): readonly GradeSize[] {
  const own = shop.sizes.filter((s) => s.article === article.slug);
  return [
    ...own.map(({ name, measures }) => ({ name, measures, from: `your size, ${shop.file}` })),
    ...(article.slug === headstall.slug ? headstallSizes : []),
  ];
}

/** What to write in a shop file so that an article has a size. */
export function noSizes(article: ArticleDefinition, shop: Shop): string {
  const names = Object.entries(measuresOf(article)?.table ?? {}).flatMap(([name, d]) =>
    d.kind === "length" && !d.handed ? [orderKey(name)] : [],
  );
  const sample = names.flatMap((name) => {
    const value = article.sample[`measures.${name}`];
    return value === undefined ? [] : [`${name} ${value}`];
  });
  const example = ["sizes:", `  ${article.slug}:`, `    your-size: ${sample.join(", ")}`].join("\n");
  const where =
    shop.file === ""
      ? "in a shop file (whittaw begin shop --to shop.yaml), name it in the order with a line shop: shop.yaml, and write in it"
      : `in ${shop.file}`;
  return `Sizes of ${article.name}: no source: enter your own. To mend: ${where}:\n${example}`;
}

export type SizesChosen =
  | { readonly ok: true; readonly sizes: readonly GradeSize[] }
  | { readonly ok: false; readonly message: string };

/** Gaps and capitals in a size's name don't count. */
const folded = (name: string): string =>
  name
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, " ");

/** The sizes of these names, parted by commas, each once; "all" or nothing: all of them. */
export function sizesNamed(all: readonly GradeSize[], names: string | undefined): SizesChosen {
  const asked = (names ?? "")
    .split(",")
    .map(folded)
    .filter((n) => n !== "");
  if (asked.length === 0 || (asked.length === 1 && asked[0] === "all")) return { ok: true, sizes: all };
  const known = all.map((s) => folded(s.name));
  const wrong = asked.find((n) => !known.includes(n));
  if (wrong !== undefined) {
    const near = nearestWord(wrong, known);
    const mend = `write ${near === undefined ? "one of these, or all" : quote(all[known.indexOf(near)]!.name)}`;
    return {
      ok: false,
      message: `There is no size ${quote(wrong)}. The sizes are: ${all.map((s) => s.name).join(", ")}. To mend: ${mend}.`,
    };
  }
  return { ok: true, sizes: all.filter((s) => asked.includes(folded(s.name))) };
}
