import { useEffect } from "preact/hooks";
import { readSettings } from "../device/settings.ts";
import { order } from "../state.ts";
import { MakeButton, STOP_ID } from "./MakeButton.tsx";
import { failed, making } from "./making.ts";
import { OtherFiles } from "./OtherFiles.tsx";
import { PaperChoice } from "./PaperChoice.tsx";
import { stopped } from "./stopped.ts";
import { TestSquare } from "./TestSquare.tsx";

/** Printing is one plain act: choose paper, print the test square once, then the template. */
export function PrintPane() {
  const now = order.value;
  useEffect(() => void readSettings(), []);
  useEffect(() => {
    failed.value = "";
  }, [now?.id, now?.text]);
  if (!now) return null;
  const why = stopped.value;
  return (
    <section class="print-pane" aria-labelledby="printing">
      <h2 id="printing" tabIndex={-1}>
        Printing
      </h2>
      <p class={why === "" ? "" : "print-stop"} id={STOP_ID}>
        {why}
      </p>
      <PaperChoice />
      <TestSquare />
      <div class="print-step">
        <h3>3. Print the template</h3>
        <p>Print it at 100 %, and measure the 50 mm square on it before you cut.</p>
        <p>
          <MakeButton
            says="Save the template (PDF)"
            wanted={{ kind: "template", what: "the template" }}
            first
          />
        </p>
      </div>
      <OtherFiles />
      <p class="print-making">{making.value}</p>
      {failed.value === "" ? null : <p class="print-fault">{failed.value}</p>}
    </section>
  );
}
