import { type Dimension, orderKey } from "../model/dimension.ts";
import { dieTable } from "../trade/dieTable.ts";

const settings: ReadonlyMap<string, Dimension> = new Map(
  Object.entries<Dimension>(dieTable).map(([name, d]) => [orderKey(name), d]),
);

/** What an order's section `die` takes, as it is written there: "least-radius". */
export const dieKeys: readonly string[] = [...settings.keys()];

/** What stands in an order without quotes. */
const PLAIN_VALUE = /^[A-Za-z0-9][A-Za-z0-9 ./+-]*$/;

/** What to write for a setting of the die: what was typed, where that can be read; else its example, or "". */
export function dieValue(key: string, typed: string): string {
  const d = settings.get(key);
  if (d?.kind === "choice") return d.choices.includes(typed) ? typed : (d.choices[0] ?? "");
  if (d?.kind !== "text") return "";
  const fits = PLAIN_VALUE.test(typed) && typed.length <= d.longest && (d.reads?.(typed).ok ?? true);
  return fits ? typed : (d.example ?? "");
}
