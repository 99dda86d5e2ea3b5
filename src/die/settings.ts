import type { Values } from "../model/dimension.ts";
import { resolve } from "../model/resolve.ts";
import { dieTable } from "../trade/dieTable.ts";

/** The die section of an order, resolved. */
export type DieSettings = Values<typeof dieTable>;

/** The settings of an order that says nothing about dies. */
export function defaultDie(): DieSettings {
  const { values } = resolve({
    table: dieTable,
    section: "die",
    label: "die",
    given: {},
    units: "mm",
    file: "",
  });
  if (!values) throw new Error("dieTable: its defaults do not resolve");
  return values;
}
