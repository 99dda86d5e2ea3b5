import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { beginShop } from "../../src/order/shopBegin.ts";
import { newFolder, whittaw } from "../support/whittaw.ts";

test("begin shop writes a shop file once, and says how an order names it", () => {
  const folder = newFolder();
  const first = whittaw(folder, "begin", "shop", "--to", "shop.yaml");
  expect(first).toMatchObject({ status: 0, err: "" });
  expect(first.out).toContain("Wrote shop.yaml\n");
  expect(first.out).toContain("shop: shop.yaml");
  expect(readFileSync(join(folder, "shop.yaml"), "utf8")).toBe(beginShop());
  const again = whittaw(folder, "begin", "shop", "--to", "shop.yaml");
  expect(again.status).toBe(2);
  expect(again.err).toContain("shop.yaml is there already and was left as it is");
});

test("begin shop without a file prints it; it has no measuring sheet", () => {
  const folder = newFolder();
  expect(whittaw(folder, "begin", "shop").out.trimEnd()).toBe(beginShop().trimEnd());
  expect(whittaw(folder, "begin", "shop", "--to", "a.yaml", "--sheet")).toMatchObject({ status: 2 });
});
