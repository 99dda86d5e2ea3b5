import { type Change, changeOf, union } from "./change.ts";
import type { SummaryHardware } from "./summary.ts";

/** Bought parts of one kind and use that differ, or that one side lacks. */
export type HardwareChange = {
  readonly kind: string;
  readonly name: string;
  readonly only?: "before" | "after";
  readonly changes: readonly Change[];
};

type Keyed = ReadonlyMap<string, SummaryHardware>;

/** Rows by kind and use; a second row of the same gets a key of its own. */
function keyed(rows: readonly SummaryHardware[]): Keyed {
  const found = new Map<string, SummaryHardware>();
  for (const row of rows) {
    const same = [...found.values()].filter((r) => r.kind === row.kind && r.name === row.name).length;
    found.set(JSON.stringify([row.kind, row.name, same]), row);
  }
  return found;
}

const partsOf = (a: SummaryHardware, b: SummaryHardware): readonly Change[] => [
  ...changeOf("how many", "count", a.count, b.count),
  ...changeOf("size", "length", a.size, b.size),
  ...changeOf("brought by the customer", "flag", a.brought, b.brought),
];

/** What depends on what a shop has in stock. */
const stockedOf = (a: SummaryHardware, b: SummaryHardware): readonly Change[] => [
  ...changeOf("spares", "count", a.spares, b.spares),
  ...changeOf("length of the shank", "length", a.shank?.chosen, b.shank?.chosen),
];

/** Words of screws and rivets tell which lengths are in stock, too. */
const detailsOf = (a: SummaryHardware, b: SummaryHardware): readonly Change[] =>
  changeOf("details", "text", a.details.join(", "), b.details.join(", "));

function changesOf(a: SummaryHardware, b: SummaryHardware, withoutShop: boolean): readonly Change[] {
  if (!withoutShop) return [...partsOf(a, b), ...stockedOf(a, b), ...detailsOf(a, b)];
  return [...partsOf(a, b), ...(a.shank || b.shank ? [] : detailsOf(a, b))];
}

/** What differs in bought parts; `withoutShop` leaves out what depends on a shop's stock. */
export function hardwareChanges(
  before: readonly SummaryHardware[],
  after: readonly SummaryHardware[],
  withoutShop: boolean,
): readonly HardwareChange[] {
  const [as, bs] = [keyed(before), keyed(after)];
  return union([...as.keys()], [...bs.keys()]).flatMap((key): readonly HardwareChange[] => {
    const [a, b] = [as.get(key), bs.get(key)];
    const { kind, name } = (a ?? b)!;
    if (!a || !b) return [{ kind, name, only: a ? "before" : "after", changes: partsOfOne((a ?? b)!, !a) }];
    const changes = changesOf(a, b, withoutShop);
    return changes.length === 0 ? [] : [{ kind, name, changes }];
  });
}

/** How many and which size, of a part that one side lacks. */
const partsOfOne = (row: SummaryHardware, isAfter: boolean): readonly Change[] => {
  const of = (what: string, kind: string, value: number | undefined): readonly Change[] =>
    isAfter ? changeOf(what, kind, undefined, value) : changeOf(what, kind, value, undefined);
  return [...of("how many", "count", row.count), ...of("size", "length", row.size)];
};
