import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { closeOrder, say } from "../actions.ts";
import { onChangedElsewhere } from "../device/store.ts";
import { order } from "../state.ts";

const ELSEWHERE =
  "This order was changed or deleted in another tab. What you change here is kept beside it: nothing is lost.";

/** Above the bench: which order this is, and the way back to all orders. */
export function BenchHead() {
  const id = order.value?.id;
  const elsewhere = useSignal(false);
  useEffect(() => {
    elsewhere.value = false;
    return onChangedElsewhere((changed) => {
      if (changed !== id) return;
      elsewhere.value = true;
      say(ELSEWHERE);
    });
  }, [id]);
  return (
    <header class="bench-head">
      <button type="button" onClick={closeOrder}>
        Back to all orders
      </button>
      <a href="#printing">To the printing</a>
      <h1>{order.value?.file}</h1>
      {elsewhere.value ? <p class="start-fault">{ELSEWHERE}</p> : null}
    </header>
  );
}
