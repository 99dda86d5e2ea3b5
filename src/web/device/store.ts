import { signal } from "@preact/signals";
import type { History } from "../history.ts";
import type { OpenOrder } from "../state.ts";
import { type Database, inStore, type KeptOrder, type Stored } from "./database.ts";
import { freeName } from "./names.ts";

// Orders kept on this device. Two tabs may have the same order open: whoever saves second keeps a copy
// beside the first one's, so that neither loses anything.

/** The revision that this tab read or wrote last, by the order's id. */
const seen = new Map<string, string>();
/** Orders that this tab goes on with as a copy of its own. */
const copies = new Map<string, string>();

const ownId = (id: string): string => copies.get(id) ?? id;

const channel = "BroadcastChannel" in globalThis ? new BroadcastChannel("whittaw-orders") : undefined;

/** Counts what this tab itself has saved or deleted, so that its list can follow. */
export const ownChanges = signal(0);

function tell(id: string): void {
  ownChanges.value += 1;
  channel?.postMessage(id);
}

/** Calls back with the id of an order that another tab saved or deleted; returns how to stop it. */
export function onChangedElsewhere(callback: (id: string) => void): () => void {
  const heard = (event: MessageEvent<unknown>): void => {
    if (typeof event.data === "string") callback(event.data);
  };
  channel?.addEventListener("message", heard);
  return () => channel?.removeEventListener("message", heard);
}

const record = ({ id, file, text, shop }: OpenOrder, history: History): KeptOrder => ({
  id,
  file,
  text,
  ...(shop === undefined ? {} : { shop }),
  history: { past: history.past, future: history.future },
  revision: crypto.randomUUID(),
  changed: Date.now(),
});

const sameTexts = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((text, k) => text === b[k]);

/** An order that was only opened: saving it would seem a change to other tabs. */
const isSame = (there: KeptOrder, { text, shop }: OpenOrder, { past, future }: History): boolean =>
  there.text === text &&
  there.shop === shop &&
  sameTexts(there.history.past, past) &&
  sameTexts(there.history.future, future);

type Saved = { readonly id: string; readonly written: boolean; readonly copy?: string };

/** One transaction: what another tab saved in between is seen, and stays. */
async function put(db: Database, order: OpenOrder, history: History): Promise<Saved> {
  const id = ownId(order.id);
  const tx = db.transaction("orders", "readwrite");
  const there = await tx.store.get(id);
  if (there && isSame(there, order, history)) {
    await tx.done;
    seen.set(id, there.revision);
    return { id, written: false };
  }
  if (there === undefined || seen.get(id) === there.revision) {
    const next = record({ ...order, id, file: there?.file ?? order.file }, history);
    await Promise.all([tx.store.put(next), tx.done]);
    seen.set(id, next.revision);
    return { id, written: true };
  }
  const names = (await tx.store.getAll()).map((o) => o.file);
  const copy = record({ ...order, id: crypto.randomUUID(), file: freeName(order.file, names) }, history);
  await Promise.all([tx.store.put(copy), tx.done]);
  copies.set(order.id, copy.id);
  seen.set(copy.id, copy.revision);
  return { id: copy.id, written: true, copy: copy.file };
}

let asked = false;
/** Asks the browser once not to throw the store away when the device runs short. */
function askToPersist(): void {
  if (asked) return;
  asked = true;
  void navigator.storage?.persist?.().catch(() => false);
}

/** Saves an order and the texts it went through. It is never lost from the page, whatever this answers. */
export async function saveOrder(order: OpenOrder, history: History): Promise<Stored> {
  askToPersist();
  const saved = await inStore((db) => put(db, order, history), "Not saved");
  if (!saved.ok) return saved;
  const { id, written, copy } = saved.value;
  if (written) tell(id);
  return copy === undefined
    ? { ok: true, value: undefined }
    : {
        ok: false,
        message: `This order was changed in another tab as well. Both are kept: yours as ${copy}.`,
      };
}

/** Orders to keep beside those that are here. */
export type NewOrder = Omit<KeptOrder, "id" | "revision">;

/** Keeps several orders at once, all or none. Those that are here already to the letter are left as they are. */
export async function addOrders(orders: readonly NewOrder[]): Promise<Stored<{ readonly added: number }>> {
  askToPersist();
  const done = await inStore(async (db) => {
    const tx = db.transaction("orders", "readwrite");
    const here = await tx.store.getAll();
    const names = here.map((o) => o.file);
    const news = orders.filter(
      (o) => !here.some((h) => h.file === o.file && isSame(h, { ...o, id: "" }, o.history)),
    );
    const puts = news.map((order) => {
      const file = freeName(order.file, names);
      names.push(file);
      return tx.store.put({ ...order, file, id: crypto.randomUUID(), revision: crypto.randomUUID() });
    });
    await Promise.all([...puts, tx.done]);
    return { added: news.length };
  }, "Not saved");
  if (done.ok && done.value.added > 0) tell("");
  return done;
}

/** An order on the list of the first page. */
export type ListedOrder = Pick<KeptOrder, "id" | "file" | "text" | "changed">;

/** All orders of this device, the last changed first. */
export function listOrders(): Promise<Stored<readonly ListedOrder[]>> {
  return inStore(async (db) => {
    const all = await db.getAll("orders");
    return all
      .map(({ id, file, text, changed }) => ({ id, file, text, changed }))
      .sort((a, b) => b.changed - a.changed || (a.id < b.id ? -1 : 1));
  }, "Not read");
}

/** A kept order; undefined when it is not there any more. */
export function loadOrder(id: string): Promise<Stored<KeptOrder | undefined>> {
  return inStore(async (db) => {
    const order = await db.get("orders", id);
    if (order) seen.set(id, order.revision);
    copies.delete(id);
    return order;
  }, "Not read");
}

/** Takes an order off this device. */
export async function deleteOrder(id: string): Promise<Stored> {
  const done = await inStore(async (db) => {
    await db.delete("orders", id);
    return undefined;
  }, "Not deleted");
  if (done.ok) tell(id);
  return done;
}

/** Every order, whole, to be exported. */
export const allOrders = (): Promise<Stored<readonly KeptOrder[]>> =>
  inStore((db) => db.getAll("orders"), "Not read");
