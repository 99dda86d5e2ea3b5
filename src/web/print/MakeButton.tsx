import type { ReadonlySignal } from "@preact/signals";
import { say } from "../actions.ts";
import { make, making, type Wanted } from "./making.ts";
import { stopped, unread } from "./stopped.ts";

type Props = {
  readonly says: string;
  readonly wanted: Wanted;
  /** Done once the file was handed over. */
  readonly then?: () => void;
  /** The printer check does without a sound order: it needs a readable one. */
  readonly evenWithErrors?: boolean;
  readonly first?: boolean;
};

export const STOP_ID = "print-stop";

const hinders = (evenWithErrors: boolean): ReadonlySignal<string> => (evenWithErrors ? unread : stopped);

/** Makes a file. A stopped button can still be reached, and says why it does nothing. */
export function MakeButton({ says, wanted, then, evenWithErrors = false, first = false }: Props) {
  const why = hinders(evenWithErrors).value;
  const off = why !== "" || making.value !== "";
  const act = async (): Promise<void> => {
    if (why !== "") return say(why);
    if (await make(wanted)) then?.();
  };
  return (
    <button
      type="button"
      class={first ? "print-first" : undefined}
      aria-disabled={off}
      {...(why === "" ? {} : { "aria-describedby": STOP_ID })}
      onClick={() => void act()}
    >
      {says}
    </button>
  );
}
