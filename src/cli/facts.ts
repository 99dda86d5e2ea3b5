import { factTables, sayFacts } from "../job.ts";
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
  const table = factTables.find((t) => t.name === name.toLowerCase());
  if (!table)
    return refused(
      `There is no table "${name}". The tables are: ${factTables.map((t) => t.name).join(", ")}`,
    );
  return json ? said(JSON.stringify(table, null, 1)) : said(...sayFacts(table));
}
