import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

/** Lies beside the demo orders and is none. */
const SHOP_FILE = "shop.yaml";

export type OrderFile = { readonly name: string; readonly text: string };

/** Every order of the repository: the demo orders and the tests' own, from a miniature to a draft horse. */
export const orderFiles: readonly OrderFile[] = ["templates", "fixtures/orders"].flatMap((folder) =>
  readdirSync(folder)
    .filter((n) => n.endsWith(".yaml") && n !== SHOP_FILE)
    .map((name) => ({ name, text: readFileSync(join(folder, name), "utf8") })),
);
