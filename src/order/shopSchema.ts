import { z } from "zod";
import { shopTopTable } from "../trade/shopTables.ts";
import { branchesOf } from "./branch.ts";
import { branchSchema } from "./schema.ts";
import { shopSections } from "./shopSections.ts";

/** The shape of a shop file as a JSON Schema (draft 2020-12), as it is published: nothing in it must be given. */
export function shopJsonSchema(): Readonly<Record<string, unknown>> {
  const root = branchesOf(shopTopTable, { sections: shopSections });
  const { schema } = branchSchema(root, () => false);
  return z.toJSONSchema(schema.describe("A shop file: a workshop's rates and habits."), { io: "input" });
}
