import type { ArticleDefinition } from "../articles/definition.ts";
import { articles } from "../articles/index.ts";
import { nearestWord, oneOf } from "../model/words.ts";
import { factTables } from "../trade/facts/index.ts";

export type ArticleFound =
  | { readonly ok: true; readonly article: ArticleDefinition }
  | { readonly ok: false; readonly message: string };

/** The article of that name, written with hyphens or spaces. */
export function articleNamed(name: string): ArticleFound {
  const slug = name.trim().toLowerCase().replaceAll(" ", "-");
  const article = articles.find((a) => a.slug === slug);
  if (article) return { ok: true, article };
  const slugs = articles.map((a) => a.slug);
  return { ok: false, message: noneOf("article", name, slugs, nearestWord(slug, slugs)) };
}

/** A name that is not among those of its kind: the one to write, or all of them. */
function noneOf(kind: string, name: string, names: readonly string[], near: string | undefined): string {
  return `There is no ${kind} "${name}". The ${kind}s are: ${names.join(", ")}. To mend: write ${near ?? oneOf(names)}.`;
}

export type TableFound =
  | { readonly ok: true; readonly table: (typeof factTables)[number] }
  | { readonly ok: false; readonly message: string };

/** The built-in table of that name; else the only one that speaks of it is offered, or the nearest name. */
export function tableNamed(name: string): TableFound {
  const word = name.trim().toLowerCase();
  const table = factTables.find((t) => t.name === word);
  if (table) return { ok: true, table };
  const names = factTables.map((t) => t.name);
  const stem = word.replace(/s$/, "");
  const speaking = factTables.filter((t) => JSON.stringify(t).toLowerCase().includes(stem));
  const near = speaking.length === 1 ? speaking[0]?.name : nearestWord(word, names);
  return { ok: false, message: noneOf("table", name, names, near) };
}
