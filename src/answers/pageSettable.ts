import type { Section } from "../articles/definition.ts";
import { articles } from "../articles/index.ts";
import { remembered } from "../geometry/remember.ts";
import { type Dimension, isMeasured, orderKey, type Value } from "../model/dimension.ts";
import { leaf } from "../model/quantity.ts";
import type { ResolvedDimension } from "../model/resolve.ts";
import { under } from "../order/entry.ts";
import type { Order } from "../order/order.ts";
import { topTable } from "../order/top.ts";

/** A value that an order may set, with what it came to. */
export type Settable = {
  /** Its path in the order, "measures.over-poll". */
  readonly key: string;
  /** Its name in its section's table. */
  readonly name: string;
  readonly section: Section;
  readonly d: Dimension;
  readonly given: boolean;
  readonly value: Value | undefined;
  /** All values of its section, by name. */
  readonly values: Readonly<Record<string, Value | undefined>>;
};

/** The lines of an order that stand in no section, as one. */
export const TOP: Section = {
  path: "",
  label: "",
  title: "the order",
  table: topTable(articles.map(({ name }) => name)),
};

/** No section resolves the top level's values with a history: none of its own formulas asks for one. */
function topValue(d: Dimension, { key, value }: ResolvedDimension): Value | undefined {
  if (typeof value !== "number") return value;
  const kind = isMeasured(d) && d.kind !== "hands" ? d.kind : "length";
  return leaf(key, value, kind, { kind: "default", source: d.source });
}

function topValues(order: Order): Settable["values"] {
  const found = new Map(order.sections.find(({ path }) => path === "")?.dimensions.map((r) => [r.key, r]));
  return Object.fromEntries(
    Object.entries(TOP.table).map(([name, d]) => {
      const resolved = found.get(orderKey(name));
      return [name, resolved && topValue(d, resolved)];
    }),
  );
}

/** The values of a section of an order, by name. */
export const valuesIn = (order: Order, section: Section): Settable["values"] =>
  section === TOP ? topValues(order) : (order.values.of(section) as Settable["values"]);

/** The names of a section that may be set, with their paths: the same for every order. */
const namesIn = remembered((section: Section) =>
  Object.entries(section.table).flatMap(([name, d]) =>
    d.handed ? [] : [{ name, d, section, key: under(section.path, orderKey(name)) }],
  ),
);

/** Every value that may be set, section by section, in the order of their tables. */
export function settableIn(order: Order): readonly Settable[] {
  const given = new Set(
    order.sections.flatMap((s) => s.dimensions.flatMap((d) => (d.origin === "given" ? [d.key] : []))),
  );
  return [TOP, ...order.article.sections].flatMap((section) => {
    const values = valuesIn(order, section);
    return namesIn(section).map((s) => ({ ...s, given: given.has(s.key), value: values[s.name], values }));
  });
}
