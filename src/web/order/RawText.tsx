import { endStep, setText } from "../actions.ts";
import { order } from "../state.ts";
import { forgetDrafts } from "./drafts.ts";
import { TEXT_ID, textOpen } from "./reading.ts";

/** Rows that the text's field shows at least and at most. */
const [FEWEST, MOST] = [8, 40];

/** The order's own text, for whoever writes it by hand. */
export function RawText() {
  const text = order.value?.text ?? "";
  const rows = Math.min(MOST, Math.max(FEWEST, text.split("\n").length + 1));
  return (
    <details
      class="raw"
      open={textOpen.value}
      onToggle={(e) => {
        textOpen.value = e.currentTarget.open;
      }}
    >
      <summary>The order’s text, as its file has it</summary>
      <label for={TEXT_ID}>Text of {order.value?.file}</label>
      <textarea
        id={TEXT_ID}
        rows={rows}
        spellcheck={false}
        autocapitalize="off"
        wrap="off"
        value={text}
        onInput={(e) => {
          forgetDrafts();
          setText(e.currentTarget.value);
        }}
        onBlur={() => void endStep()}
      />
    </details>
  );
}
