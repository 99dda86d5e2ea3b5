import { openOrder } from "../actions.ts";
import { freeName } from "../device/names.ts";
import { shopFile } from "../device/settings.ts";
import { listOrders, loadOrder } from "../device/store.ts";

// Ways from the first page to the bench. Each answers with what hindered it, or "".

/** A new order, under a name that no other order of this device has. */
export async function openNew(file: string, text: string, shop: string | undefined): Promise<string> {
  const here = await listOrders();
  const taken = here.ok ? here.value : [];
  const same = taken.find((o) => o.file === file && o.text === text);
  // Opened before and never changed since: it is the same order, and keeps its history.
  if (same && (await openKept(same.id)) === "") return "";
  const name = freeName(
    file,
    taken.map((o) => o.file),
  );
  void openOrder(name, text, shop);
  return "";
}

/** An order of this device, with its history. */
export async function openKept(id: string): Promise<string> {
  const loaded = await loadOrder(id);
  if (!loaded.ok) return loaded.message;
  const kept = loaded.value;
  if (!kept) return "This order is not on this device any more: another tab has deleted it.";
  void openOrder(kept.file, kept.text, kept.shop ?? shopFile.value?.text, { id, history: kept.history });
  return "";
}
