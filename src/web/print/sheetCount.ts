import { type Signal, useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { engine } from "../engine/client.ts";
import type { Printing, Said } from "../engine/engine.ts";
import type { OpenOrder } from "../state.ts";

/** Sheets are counted when the maker has paused this long: what is looked at comes first. */
const PAUSE_MS = 1200;

export type Counted = Said<number> | undefined;

/** One count at a time: those that wait behind a running one ask for the newest only. */
let running: Promise<unknown> = Promise.resolve();

async function count({ text, file }: OpenOrder, how: Printing): Promise<Said<number>> {
  const laid = await engine.sheets(text, file, how);
  return laid.ok ? { ok: true, value: laid.value.length } : laid;
}

/** How many sheets the order takes on that paper; undefined while they are counted. */
export function useSheetCount(order: OpenOrder | undefined, how: Printing): Signal<Counted> {
  const counted = useSignal<Counted>(undefined);
  useEffect(() => {
    counted.value = undefined;
    if (!order) return;
    let overtaken = false;
    const timer = setTimeout(async () => {
      await running;
      if (overtaken) return;
      const mine = count(order, how);
      running = mine.catch(() => undefined);
      const said = await mine;
      if (!overtaken) counted.value = said;
    }, PAUSE_MS);
    return () => {
      overtaken = true;
      clearTimeout(timer);
    };
  }, [order?.id, order?.text, order?.file, how.paper, how.printed]);
  return counted;
}
