import { z } from "zod";
import type { ArticleDefinition } from "../articles/definition.ts";
import { type Dimension, type DimensionTable, isMeasured, orderKey } from "../model/dimension.ts";
import { allowedWords, defaultWords, sentence } from "./about.ts";
import { type Branch, branchesOf, nameOf, tableOf } from "./branch.ts";
import { under } from "./entry.ts";
import type { Order } from "./order.ts";
import { sampleOrder } from "./sample.ts";
import { topTable } from "./top.ts";

// The shape of an order for editors and other programs. Ranges, units and sense are the resolver's.

// Without this zod tries to compile code, which a page's content-security policy forbids.
z.config({ jitless: true });

const described = (schema: z.ZodType, d: Dimension, table: DimensionTable): z.ZodType => {
  const words = [d.means, allowedWords(d, { table }), defaultWords(d, { table })];
  return schema.describe(words.map(sentence).filter(Boolean).join(" "));
};

/** Editors read a bare 9 as a number and yes as text; both reach the resolver as they are written. */
function valueSchema(d: Dimension): z.ZodType {
  if (d.kind === "choice") return z.enum(d.choices);
  if (d.kind === "flag") return z.union([z.boolean(), z.enum(["yes", "no", "true", "false"])]);
  if (d.kind === "text") return z.union([z.string().max(d.longest), z.number(), z.boolean()]);
  return z.union([z.string().min(1), z.number()]);
}

/** A value must be given when it has no default and the article has none for it either. */
function mustBeGiven(d: Dimension, path: string, order: Order): boolean {
  if (d.default !== undefined || (isMeasured(d) && d.optional)) return false;
  const dimensions = order.sections.flatMap((s) => s.dimensions);
  return dimensions.find((r) => r.key === path)?.origin === "given";
}

type Shaped = { readonly schema: z.ZodType; readonly required: boolean };

/** Tells the values that must stand in a file, by their paths. */
type MustBeGiven = (d: Dimension, path: string) => boolean;

/** One value under a name of the writer's own. */
const openValue = (): z.ZodType => z.union([z.string().min(1), z.number()]);

/** The shape of a branch and those under it, and whether it must be there. */
export function branchSchema(branch: Branch, mustBe: MustBeGiven): Shaped {
  const table = tableOf(branch);
  const shape: Record<string, z.ZodType> = {};
  let required = branch.path === "";
  for (const [name, d] of Object.entries(table)) {
    if (d.handed) continue;
    const must = mustBe(d, under(branch.path, orderKey(name)));
    const schema = described(valueSchema(d), d, table);
    shape[orderKey(name)] = must ? schema : schema.optional();
    required ||= must;
  }
  for (const child of branch.branches) {
    const { schema, required: must } = branchSchema(child, mustBe);
    // A section of which nothing is set may stand there empty.
    shape[nameOf(child)] = must ? schema : schema.nullable().optional();
    required ||= must;
  }
  const schema = branch.open ? z.record(z.string(), openValue()) : z.strictObject(shape);
  const title = branch.section?.title ?? "";
  return { schema: title === "" ? schema : schema.describe(title), required };
}

/** The shape of an order for that article. Throws when the article's sample has faults. */
export function orderSchema(article: ArticleDefinition): z.ZodType {
  const root = branchesOf(topTable([article.name]), article);
  const order = sampleOrder(article);
  return branchSchema(root, (d, path) => mustBeGiven(d, path, order)).schema.describe(
    `An order: ${article.name}, ${article.means}.`,
  );
}

/** The same as a JSON Schema (draft 2020-12), as it is published. */
export function jsonSchema(article: ArticleDefinition): Readonly<Record<string, unknown>> {
  return z.toJSONSchema(orderSchema(article), { io: "input" });
}
