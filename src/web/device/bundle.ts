import { strFromU8, strToU8, unzipSync, type Zippable, zipSync } from "fflate";
import type { KeptOrder } from "./database.ts";
import { freeName, safeName } from "./names.ts";
import type { NewOrder } from "./store.ts";
import { isShopFile, LARGEST_BYTES } from "./textLines.ts";

// Orders carried from one device to another: one .zip with an order file each, which any program can open,
// and one file more with what an order file has no room for.

const MORE = "whittaw-orders.json";
/** The same files give the same bytes: a zip can't be without a time, so it has its earliest. */
const NO_TIME = { mtime: new Date(1980, 0, 1) };
/** More than this is no bundle of ours. */
const MOST = { orders: 5000, bytes: 200_000_000 } as const;

export type Texts = { readonly file: string; readonly text: string };
export type Bundle = { readonly orders: readonly NewOrder[]; readonly shop?: Texts };

type More = Pick<NewOrder, "file" | "changed" | "history"> & { readonly shop?: string };

/** Files by path, as one .zip. */
export const zipped = (files: Readonly<Record<string, Uint8Array>>): Uint8Array<ArrayBuffer> =>
  zipSync(files as Zippable, NO_TIME);

/** Orders with their history, and the shop file, as one .zip. */
export function bundleOf(orders: readonly KeptOrder[], shop?: Texts): Uint8Array<ArrayBuffer> {
  const files: Record<string, Uint8Array> = {};
  const names: string[] = [];
  const add = (file: string, text: string): string => {
    const name = freeName(file, names);
    names.push(name);
    files[name] = strToU8(text);
    return name;
  };
  if (shop) add(shop.file, shop.text);
  const more = orders.map(
    ({ file, text, shop: priced, changed, history }): More => ({
      file: add(file, text),
      changed,
      history,
      ...(priced === undefined ? {} : { shop: priced }),
    }),
  );
  files[MORE] = strToU8(JSON.stringify({ version: 1, orders: more }));
  return zipped(files);
}

const isTexts = (value: unknown): value is readonly string[] =>
  Array.isArray(value) && value.every((text) => typeof text === "string" && text.length <= LARGEST_BYTES);

/** What the file of ours says of one order; anything odd is as if it were not there. */
function moreOf(value: unknown): More | undefined {
  const { file, changed, history, shop } = (value ?? {}) as Partial<Record<keyof More, unknown>>;
  const { past, future } = (history ?? {}) as { past?: unknown; future?: unknown };
  if (typeof file !== "string" || typeof changed !== "number" || !Number.isFinite(changed)) return undefined;
  return {
    file,
    changed,
    history: { past: isTexts(past) ? past : [], future: isTexts(future) ? future : [] },
    ...(typeof shop === "string" && shop.length <= LARGEST_BYTES ? { shop } : {}),
  };
}

function readMore(bytes: Uint8Array | undefined): readonly More[] {
  if (!bytes) return [];
  try {
    const { orders } = JSON.parse(strFromU8(bytes)) as { orders?: unknown };
    return Array.isArray(orders) ? orders.map(moreOf).filter((m) => m !== undefined) : [];
  } catch {
    return [];
  }
}

const YAML = /\.ya?ml$/i;

/** The files of a .zip that are ours to read, none larger than it may be. */
function entriesOf(zip: Uint8Array): Readonly<Record<string, Uint8Array>> {
  let [count, bytes] = [0, 0];
  return unzipSync(zip, {
    filter: ({ name, originalSize }) => {
      const isOrder = YAML.test(name);
      if (!isOrder && name !== MORE) return false;
      count += 1;
      bytes += originalSize;
      if (isOrder && originalSize > LARGEST_BYTES)
        throw new Error(`${safeName(name)} in it is larger than 1 MB`);
      if (count > MOST.orders || bytes > MOST.bytes) throw new Error("it holds more than orders can be");
      return true;
    },
  });
}

/** Reads a .zip of orders; throws an Error that says what is wrong with it. */
export function readBundle(zip: Uint8Array, now: number): Bundle {
  const entries = entriesOf(zip);
  const more = new Map(readMore(entries[MORE]).map((m) => [m.file, m]));
  const decoder = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true });
  const texts = Object.entries(entries)
    .filter(([name]) => name !== MORE)
    .map(([name, bytes]) => ({ name, file: safeName(name), text: decoder.decode(bytes) }));
  if (texts.length === 0) throw new Error("there is no order in it");
  // An order of ours is known by its name there, a shop file by what it says.
  const shop = texts.find((t) => !more.has(t.name) && isShopFile(t.text));
  const orders = texts
    .filter((t) => t !== shop)
    .map(({ name, file, text }): NewOrder => {
      const { file: _, ...kept } = more.get(name) ?? {
        file,
        changed: now,
        history: { past: [], future: [] },
      };
      return { ...kept, file, text };
    });
  return { orders, ...(shop ? { shop: { file: shop.file, text: shop.text } } : {}) };
}
