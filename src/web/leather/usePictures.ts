import { type Signal, useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import type { PagePicture } from "../../job.ts";
import type { Said } from "../engine/engine.ts";
import type { OpenOrder } from "../state.ts";

/** Pictures are asked for when the maker has paused this long. */
const PAUSE_MS = 400;

export type Pictures = {
  readonly list: readonly PagePicture[];
  /** True while newer ones are made; the last ones stay. */
  readonly busy: boolean;
  readonly message: string;
};

type Ask = (order: OpenOrder) => Promise<Said<readonly PagePicture[]>>;

const messageOf = (fault: unknown): string => (fault instanceof Error ? fault.message : String(fault));

/**
 * Pictures of the order as it stands. `asked` names what is asked for beside the order: another one is
 * asked for anew.
 */
export function usePictures(order: OpenOrder | undefined, asked: string, ask: Ask): Signal<Pictures> {
  const pictures = useSignal<Pictures>({ list: [], busy: true, message: "" });
  useEffect(() => {
    if (!order) return;
    let overtaken = false;
    const put = (next: Partial<Pictures>): void => {
      if (!overtaken) pictures.value = { ...pictures.peek(), busy: false, message: "", ...next };
    };
    put({ busy: true });
    const timer = setTimeout(() => {
      ask(order).then(
        (said) => put(said.ok ? { list: said.value } : { message: said.message }),
        (fault) => put({ message: messageOf(fault) }),
      );
    }, PAUSE_MS);
    return () => {
      overtaken = true;
      clearTimeout(timer);
    };
  }, [order?.id, order?.text, order?.file, asked]);
  return pictures;
}
