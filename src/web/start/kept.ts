import { signal } from "@preact/signals";
import { say } from "../actions.ts";
import { bundleOf } from "../device/bundle.ts";
import { download } from "../device/download.ts";
import { stemOf } from "../device/names.ts";
import { shopFile } from "../device/settings.ts";
import { allOrders, deleteOrder, type ListedOrder, listOrders, loadOrder } from "../device/store.ts";

// The orders of this device, as the first page lists them.

type List = { readonly orders: readonly ListedOrder[]; readonly message: string };

/** Undefined until the store has answered. */
export const list = signal<List | undefined>(undefined);

let asked = 0;

export async function refresh(): Promise<void> {
  asked += 1;
  const mine = asked;
  const read = await listOrders();
  if (mine !== asked) return;
  list.value = read.ok
    ? { orders: read.value, message: "" }
    : { orders: list.peek()?.orders ?? [], message: read.message };
}

export async function remove({ id, file }: ListedOrder): Promise<void> {
  const done = await deleteOrder(id);
  say(done.ok ? `${file} is deleted from this device.` : done.message);
  await refresh();
}

const ZIP = "application/zip";

/** One order with its history, as a .zip. */
export async function saveOne(id: string): Promise<void> {
  const loaded = await loadOrder(id);
  if (!loaded.ok) return say(loaded.message);
  if (!loaded.value) return refresh();
  const name = `${stemOf(loaded.value.file)}-order.zip`;
  download(name, bundleOf([loaded.value]), ZIP);
  say(`Saved as ${name}.`);
}

/** All orders with their history, and the shop file, as a .zip. */
export async function saveAll(): Promise<void> {
  const all = await allOrders();
  if (!all.ok) return say(all.message);
  download("whittaw-orders.zip", bundleOf(all.value, shopFile.value), ZIP);
  say("Saved as whittaw-orders.zip.");
}
