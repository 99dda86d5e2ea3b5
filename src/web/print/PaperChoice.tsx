import { useSignal } from "@preact/signals";
import { say } from "../actions.ts";
import { paper, printing, setPaper } from "../device/settings.ts";
import { order, view } from "../state.ts";
import { isRoll, PAPERS, rollWidth } from "./papers.ts";
import { type Counted, useSheetCount } from "./sheetCount.ts";
import { unread } from "./stopped.ts";

/** What the order says stands; no paper is called so. */
const ORDERS_OWN = "";
const ROLL = "roll";
/** A common width, to begin with. */
const FIRST_ROLL = "610 mm";

async function choose(next: string | undefined): Promise<void> {
  const done = await setPaper(next);
  if (!done.ok) say(done.message);
}

const ordersOwn = (): string =>
  view.value?.groups.flatMap((g) => g.fields).find((f) => f.key === "paper")?.text ?? "";

/** The paper in the printer, and how many sheets the template takes on it. */
export function PaperChoice() {
  const now = paper.value;
  const chosen = now === undefined ? ORDERS_OWN : isRoll(now) ? ROLL : now;
  const own = ordersOwn();
  return (
    <div class="print-step">
      <h3>1. Paper</h3>
      <p class="print-fields">
        <label>
          Paper in the printer{" "}
          <select
            value={chosen}
            onChange={(e) => {
              const { value } = e.currentTarget;
              void choose(value === ORDERS_OWN ? undefined : value === ROLL ? `roll ${FIRST_ROLL}` : value);
            }}
          >
            <option value={ORDERS_OWN}>as the order says{own === "" ? "" : `: ${own}`}</option>
            {PAPERS.map((p) => (
              <option key={p} value={p}>
                {p}
              </option>
            ))}
            <option value={ROLL}>a roll</option>
          </select>
        </label>
        {now !== undefined && isRoll(now) ? <RollWidth now={rollWidth(now)} /> : null}
      </p>
      <Sheets />
    </div>
  );
}

function RollWidth({ now }: { readonly now: string }) {
  const typed = useSignal(now);
  return (
    <label>
      Width of the roll (a bare number is mm){" "}
      <input
        type="text"
        size={8}
        value={typed.value}
        onInput={(e) => {
          typed.value = e.currentTarget.value;
        }}
        onChange={() => void choose(`roll ${typed.value.trim()}`)}
      />
    </label>
  );
}

function Sheets() {
  const counted = useSheetCount(order.value, printing.value).value;
  return (
    <p class={counted && !counted.ok ? "print-fault" : "print-count"} aria-live="polite">
      {sayCount(counted)}
    </p>
  );
}

function sayCount(counted: Counted): string {
  if (unread.value !== "") return unread.value;
  if (counted === undefined) return "Counting the sheets …";
  if (!counted.ok) return counted.message;
  return counted.value === 1
    ? "The template is 1 sheet."
    : `The template is ${counted.value} sheets; the first says how to print and join them.`;
}
