import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { History } from "../history.ts";

// What is kept on this device: orders with their history, and settings. Nothing of it leaves the device.

export type KeptOrder = {
  readonly id: string;
  readonly file: string;
  readonly text: string;
  readonly shop?: string;
  readonly history: History;
  /** When it was last changed, milliseconds since 1970. */
  readonly changed: number;
  /** Another one with every save: tells a tab that another one saved in between. */
  readonly revision: string;
};

interface Kept extends DBSchema {
  orders: { key: string; value: KeptOrder };
  settings: { key: string; value: unknown };
}

export type Database = IDBPDatabase<Kept>;

let opened: Promise<Database> | undefined;

/** The device's store, opened once; a failed opening is tried again at the next call. */
export function database(): Promise<Database> {
  opened ??= openDB<Kept>("whittaw", 1, {
    upgrade(db) {
      db.createObjectStore("orders", { keyPath: "id" });
      db.createObjectStore("settings");
    },
    // A newer page in another tab wants to change the store: let it.
    blocking: (_now, _next, event) => {
      (event.target as IDBDatabase).close();
      opened = undefined;
    },
    terminated: () => {
      opened = undefined;
    },
  }).catch((e: unknown) => {
    opened = undefined;
    throw e;
  });
  return opened;
}

export type Stored<T = undefined> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly message: string };

/** What failed, as a message begins. */
export type Deed = "Not saved" | "Not read" | "Not deleted";

const KEEPS_NOTHING = ["InvalidStateError", "SecurityError", "NotFoundError", "ReferenceError"];

/** Why the device could not do it, in words; the order stays on the bench whatever happens. */
export function sayStoreError(e: unknown, deed: Deed = "Not saved"): string {
  const name = e instanceof DOMException || e instanceof Error ? e.name : "";
  if (name === "QuotaExceededError")
    return `${deed}: this device has no room left. What is open stays open: save it as a file now, then make room.`;
  if (KEEPS_NOTHING.includes(name) || globalThis.indexedDB === undefined)
    return `${deed}: this browser keeps nothing here (a private window, or storage is switched off). Save the order as a file before you close the page.`;
  return `${deed}: the device's store failed (${name === "" ? String(e) : name}). What is open stays open: save it as a file.`;
}

/** Does it in the store, or says why not. */
export async function inStore<T>(work: (db: Database) => Promise<T>, deed: Deed): Promise<Stored<T>> {
  try {
    return { ok: true, value: await work(await database()) };
  } catch (e) {
    return { ok: false, message: sayStoreError(e, deed) };
  }
}
