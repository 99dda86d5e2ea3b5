import { factTables, sayFacts, tableNamed } from "../job.ts";
import { type Ending, refused, said } from "./terminal.ts";

/** Prints one built-in table with its sources, or the list of tables. */
export function facts(name: string | undefined, json: boolean): Ending {
  if (name === undefined) {
    const widest = Math.max(...factTables.map((t) => t.name.length));
    return json
      ? said(JSON.stringify(factTables, null, 1))
      : said(
          ...factTables.map((t) => `${t.name.padEnd(widest)}  ${t.title}`),
          "",
          "whittaw facts NAME prints one of them with its sources.",
        );
  }
  const found = tableNamed(name);
  if (!found.ok) return refused(found.message);
  return json ? said(JSON.stringify(found.table, null, 1)) : said(...sayFacts(found.table));
}
