import { useSignal } from "@preact/signals";
import { view } from "../state.ts";
import { MakeButton } from "./MakeButton.tsx";
import { saveOrderFile } from "./making.ts";
import { Priced } from "./Priced.tsx";

/** What else can be had of an order. */
export function OtherFiles() {
  return (
    <div class="print-step">
      <h3>Other files</h3>
      <p class="print-buttons">
        <MakeButton
          says="Bench sheet (PDF)"
          wanted={{ kind: "bench", what: "the bench sheet", ending: ".pdf" }}
        />
        <MakeButton says="Quote (PDF)" wanted={{ kind: "quote", what: "the quote", ending: ".pdf" }} />
        <MakeButton says="Everything as data (job.json)" wanted={{ kind: "job", what: "job.json" }} />
        <button type="button" onClick={saveOrderFile}>
          The order itself (YAML)
        </button>
        <MakeButton says="All of it in one .zip" wanted={{ kind: "all", what: "all files" }} />
      </p>
      <Priced />
      <OfPieces />
    </div>
  );
}

/** Drawings of single pieces, and of their dies. */
function OfPieces() {
  const ticked = useSignal<readonly string[]>([]);
  const pieces = view.value?.pieces ?? [];
  const ids = pieces.map((p) => p.id).filter((id) => ticked.value.includes(id));
  const chosen = ids.length === 0 ? {} : { pieces: ids };
  const tick = (id: string): void => {
    ticked.value = ticked.value.includes(id) ? ticked.value.filter((t) => t !== id) : [...ticked.value, id];
  };
  return (
    <fieldset class="print-pieces">
      <legend>Of single pieces (none ticked: of all)</legend>
      <div class="print-ticks">
        {pieces.map(({ id, name }) => (
          <label key={id}>
            <input type="checkbox" checked={ticked.value.includes(id)} onChange={() => tick(id)} /> {name}
          </label>
        ))}
      </div>
      <p class="print-buttons">
        <MakeButton says="Pieces (SVG)" wanted={{ kind: "pieces", what: "the pieces", ...chosen }} />
        <MakeButton
          says="Dies, drawing and DXF"
          wanted={{ kind: "die", what: "the die drawings", ...chosen }}
        />
      </p>
      <p class="print-quiet">
        A die bites: press guarding and two-hand control are as local rules and the press’s maker demand.
      </p>
    </fieldset>
  );
}
