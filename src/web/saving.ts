import { saveOrder } from "./device/store.ts";
import type { History, Steps } from "./history.ts";
import { notice, type OpenOrder, order } from "./state.ts";

const SAVED = "Saved on this device.";

type ToSave = { readonly order: OpenOrder; readonly history: History };
let saving = false;
let toSave: ToSave | undefined;

/** Saves the newest state: while one is being saved, only the newest of those that wait is kept. */
export async function save(next: OpenOrder, { past, future }: Steps): Promise<void> {
  toSave = { order: next, history: { past, future } };
  if (saving) return;
  saving = true;
  try {
    for (let now: ToSave | undefined = toSave; now; now = toSave) {
      toSave = undefined;
      const saved = await saveOrder(now.order, now.history);
      if (order.value?.id === now.order.id) notice.value = saved.ok ? SAVED : saved.message;
    }
  } finally {
    saving = false;
  }
}
