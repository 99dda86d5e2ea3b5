import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { say } from "../actions.ts";
import { barsOn, paperNow, printing, setMeasured } from "../device/settings.ts";
import { engine } from "../engine/client.ts";
import { order } from "../state.ts";
import { MakeButton } from "./MakeButton.tsx";

/** How far the printer strays: printed and measured once for each paper. */
export function TestSquare() {
  const { printed } = printing.value;
  return (
    <div class="print-step">
      <h3>2. Print the test square once</h3>
      <p>
        Print it at 100 % (“actual size”, no fitting) on {paperNow.value}, and measure its two bars. The sheet
        says how long they should be; if they are, go on.
      </p>
      <p>
        <MakeButton
          says="Save the test square (PDF)"
          wanted={{ kind: "printer check", what: "the test square" }}
          evenWithErrors
        />
      </p>
      {printed === undefined ? <Measured key={barsOn.value} /> : <Corrected printed={printed} />}
    </div>
  );
}

function Corrected({ printed }: { readonly printed: string }) {
  const forget = async (): Promise<void> => {
    const done = await setMeasured(barsOn.value, undefined);
    say(done.ok ? "What the bars measured is forgotten: nothing is corrected." : done.message);
  };
  return (
    <p>
      The bars measured <strong>{printed.replace("x", " x ")}</strong>: templates on {paperNow.value} are
      corrected for that.{" "}
      <button type="button" onClick={() => void forget()}>
        Forget this
      </button>
    </p>
  );
}

const FAULT_ID = "bars-fault";

/** Asks the engine whether bars of that length can be this printer's; "" or why not. */
async function refusal(printed: string): Promise<string> {
  const now = order.value;
  if (!now) return "";
  const laid = await engine.sheets(now.text, now.file, { ...printing.value, printed });
  return laid.ok ? "" : laid.message;
}

function Measured() {
  const [short, long, fault, busy] = [useSignal(""), useSignal(""), useSignal(""), useSignal(false)];
  useEffect(() => {
    fault.value = "";
  }, [short.value, long.value]);
  const keep = async (): Promise<void> => {
    if (busy.value) return;
    const bars = [short.value.trim(), long.value.trim()];
    if (bars.includes("")) {
      fault.value = "Write what both bars measured.";
      return;
    }
    busy.value = true;
    say("Checking what the bars measured …");
    const on = barsOn.value;
    // With a unit written, "x" needs room around it.
    const printed = bars.join(bars.some((b) => /[a-z"″”]/i.test(b)) ? " x " : "x");
    const why = await refusal(printed).catch((e: unknown) => String(e));
    busy.value = false;
    fault.value = why;
    if (why !== "") return say(why);
    const done = await setMeasured(on, printed);
    say(done.ok ? "Kept: templates are corrected for this printer." : done.message);
  };
  return (
    <form
      class="print-fields"
      onSubmit={(e) => {
        e.preventDefault();
        void keep();
      }}
    >
      <Bar label="Bar along the short edge, mm" value={short} wrong={fault.value !== ""} />
      <Bar label="Bar along the long edge, mm" value={long} wrong={fault.value !== ""} />
      <button type="submit" aria-disabled={busy.value}>
        Correct for these
      </button>
      <p class="print-fault" id={FAULT_ID}>
        {fault.value}
      </p>
    </form>
  );
}

type BarProps = { readonly label: string; readonly value: { value: string }; readonly wrong: boolean };

function Bar({ label, value, wrong }: BarProps) {
  return (
    <label>
      {label}{" "}
      <input
        type="text"
        size={8}
        value={value.value}
        {...(wrong ? { "aria-invalid": true, "aria-describedby": FAULT_ID } : {})}
        onInput={(e) => {
          value.value = e.currentTarget.value;
        }}
      />
    </label>
  );
}
