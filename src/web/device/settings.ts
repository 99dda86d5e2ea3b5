import { computed, type ReadonlySignal, signal } from "@preact/signals";
import type { Printing } from "../engine/engine.ts";
import { view } from "../state.ts";
import { inStore, type Stored } from "./database.ts";

// Kept on this device: what the printer does, and the shop file.

/** The paper in the printer; undefined: the order's own. */
export const paper = signal<string | undefined>(undefined);
/** What the bars of the printer check measured, by the paper and the margin they were printed with. */
export const measured = signal<Readonly<Record<string, string>>>({});

const textAt = (key: string): string =>
  view.value?.groups.flatMap((g) => g.fields).find((f) => f.key === key)?.text ?? "";

/** The paper that is printed on: the one chosen, or the order's own. */
export const paperNow: ReadonlySignal<string> = computed(() => paper.value ?? textAt("paper"));

/** The bars are as long as paper and margin allow: what they measured holds for these alone. */
export const barsOn: ReadonlySignal<string> = computed(
  () => `${paperNow.value.trim().toLowerCase()}, margin ${textAt("margin")}`,
);

/** How the order on the bench is printed. */
export const printing: ReadonlySignal<Printing> = computed(() => {
  const printed = measured.value[barsOn.value];
  return {
    ...(paper.value === undefined ? {} : { paper: paper.value }),
    ...(printed === undefined ? {} : { printed }),
  };
});

export type ShopFile = { readonly file: string; readonly text: string };
/** The shop file that new orders are priced by. */
export const shopFile = signal<ShopFile | undefined>(undefined);

/** A setting by its name; undefined when it was never set, or the store failed. */
export async function getSetting(name: string): Promise<unknown> {
  const read = await inStore((db) => db.get("settings", name), "Not read");
  return read.ok ? read.value : undefined;
}

/** Keeps a setting; `undefined` takes it out. */
export const setSetting = (name: string, value: unknown): Promise<Stored> =>
  inStore(async (db) => {
    if (value === undefined) await db.delete("settings", name);
    else await db.put("settings", value, name);
    return undefined;
  }, "Not saved");

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null;
const textsOf = (value: unknown): Readonly<Record<string, string>> =>
  isObject(value)
    ? Object.fromEntries(Object.entries(value).filter((e): e is [string, string] => typeof e[1] === "string"))
    : {};

/** What was set while the store was read stands. */
const touched = new Set<string>();

async function read(): Promise<void> {
  const [kept, bars, shop] = await Promise.all(["paper", "measured", "shop"].map(getSetting));
  if (!touched.has("paper") && typeof kept === "string") paper.value = kept;
  if (!touched.has("measured")) measured.value = textsOf(bars);
  const { file, text } = textsOf(shop);
  if (!touched.has("shop") && file !== undefined && text !== undefined) shopFile.value = { file, text };
}

let reading: Promise<void> | undefined;
/** Reads what is kept, once; what can't be read is as if it had never been set. */
export function readSettings(): Promise<void> {
  reading ??= read();
  return reading;
}

const set = (name: string, value: unknown): Promise<Stored> => {
  touched.add(name);
  return setSetting(name, value);
};

export function setPaper(next: string | undefined): Promise<Stored> {
  paper.value = next;
  return set("paper", next);
}

/** Keeps what the bars measured on that paper; undefined forgets it. */
export function setMeasured(on: string, bars: string | undefined): Promise<Stored> {
  const { [on]: _, ...others } = measured.value;
  measured.value = bars === undefined ? others : { ...others, [on]: bars };
  return set("measured", measured.value);
}

export function setShopFile(next: ShopFile | undefined): Promise<Stored> {
  shopFile.value = next;
  return set("shop", next);
}
