import { readBundle, type Texts } from "../device/bundle.ts";
import { safeName } from "../device/names.ts";
import { setShopFile, shopFile } from "../device/settings.ts";
import { addOrders, type NewOrder } from "../device/store.ts";
import { isShopFile, LARGEST_BYTES } from "../device/textLines.ts";
import { openNew } from "./opening.ts";

// Files that a person hands to the first page: orders, a shop file, or a .zip of orders.

/** No .zip of orders is larger. */
const LARGEST_ZIP = 50_000_000;

type Taken =
  | { readonly is: "order" | "shop"; readonly texts: Texts }
  | { readonly is: "orders"; readonly orders: readonly NewOrder[]; readonly shop?: Texts }
  | { readonly is: "refused"; readonly message: string };

const refuse = (message: string): Taken => ({ is: "refused", message });
const reasonOf = (e: unknown): string => (e instanceof Error ? e.message : String(e));

async function take(file: File): Promise<Taken> {
  try {
    const isZip = /\.zip$/i.test(file.name);
    if (file.size > (isZip ? LARGEST_ZIP : LARGEST_BYTES))
      return refuse(
        isZip
          ? `${file.name} is larger than 50 MB: no .zip of orders is.`
          : `${file.name} is larger than 1 MB. To mend: choose the order's own file; even a long one is a hundred times smaller.`,
      );
    const bytes = new Uint8Array(await file.arrayBuffer());
    return isZip ? takeZip(file.name, bytes) : takeText(file.name, bytes);
  } catch (e) {
    return refuse(`${file.name} can't be read (${reasonOf(e)}). To mend: choose it once more.`);
  }
}

function takeText(name: string, bytes: Uint8Array): Taken {
  try {
    const text = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
    return { is: isShopFile(text) ? "shop" : "order", texts: { file: safeName(name), text } };
  } catch {
    return refuse(
      `${name} is not a text file in UTF-8. To mend: save the order as plain text, with the encoding "UTF-8".`,
    );
  }
}

function takeZip(name: string, bytes: Uint8Array): Taken {
  try {
    return { is: "orders", ...readBundle(bytes, Date.now()) };
  } catch (e) {
    return refuse(`${name} can't be brought in: ${reasonOf(e)}.`);
  }
}

const asNew = ({ file, text }: Texts, shop: string | undefined): NewOrder => ({
  file,
  text,
  ...(shop === undefined ? {} : { shop }),
  changed: Date.now(),
  history: { past: [], future: [] },
});

const counted = (n: number): string => `${n} ${n === 1 ? "order" : "orders"}`;

/** Keeps orders on the device and says so. */
async function keep(orders: readonly NewOrder[]): Promise<string> {
  const kept = await addOrders(orders);
  if (!kept.ok) return kept.message;
  const { added } = kept.value;
  const before = orders.length - added;
  return [
    added === 0 ? "" : `${counted(added)} brought in.`,
    before === 0 ? "" : `${counted(before)} ${before === 1 ? "was" : "were"} here already.`,
  ]
    .filter((s) => s !== "")
    .join(" ");
}

async function keepShop(shop: Texts): Promise<string> {
  const kept = await setShopFile(shop);
  return kept.ok ? `${shop.file} is your shop file now.` : kept.message;
}

/**
 * Takes files in: one order alone goes to the bench, several are kept on the device; a shop file becomes
 * yours. Answers in words.
 */
export async function takeIn(files: readonly File[]): Promise<string> {
  const taken = await Promise.all(files.map(take));
  const said = taken.flatMap((t) => (t.is === "refused" ? [t.message] : []));
  const shops = taken.flatMap((t) => (t.is === "shop" ? [t.texts] : []));
  const carried = taken.flatMap((t) => (t.is === "orders" && t.shop ? [t.shop] : []));
  // A shop file that came along in a .zip never takes the place of one that was chosen.
  const shop = shops.at(-1) ?? (shopFile.value === undefined ? carried[0] : undefined);
  if (shops.length > 1)
    said.push(`There can be one shop file: the last one, ${shops.at(-1)?.file}, is taken.`);
  if (shop) said.push(await keepShop(shop));
  const orders = taken.flatMap((t) => (t.is === "order" ? [t.texts] : []));
  const bundled = taken.flatMap((t) => (t.is === "orders" ? t.orders : []));
  const priced = shopFile.value?.text;
  const [only] = orders;
  const alone = orders.length === 1 && bundled.length === 0 && said.length === (shop ? 1 : 0);
  if (alone && only) said.push(await openNew(only.file, only.text, priced));
  else if (orders.length + bundled.length > 0)
    said.push(await keep([...orders.map((o) => asNew(o, priced)), ...bundled]));
  return said.filter((s) => s !== "").join(" ");
}
