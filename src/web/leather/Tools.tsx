import { useId } from "preact/hooks";
import { showPiece } from "../actions.ts";
import { order, view } from "../state.ts";
import { fitAll, toggleLabels, toggleMeasuring, turnOver, ZOOM_STEP, zoomBy } from "./deeds.ts";
import { alone, ends, eyeNow, labelled, labelsOn, labelTrouble, measuring, shown, turned } from "./look.ts";
import { sayLength } from "./sayLength.ts";
import { lengthOf } from "./scene.ts";

/** Which pieces are shown: all, or one alone. */
export function ChoosePiece() {
  const id = useId();
  return (
    <span class="choose-piece">
      <label for={id}>Show</label>{" "}
      <select
        id={id}
        value={alone.value?.id ?? ""}
        onChange={(e) => showPiece(e.currentTarget.value === "" ? undefined : e.currentTarget.value)}
      >
        <option value="">all pieces</option>
        {(view.value?.pieces ?? []).map((piece) => (
          <option key={piece.id} value={piece.id}>
            {piece.name}
          </option>
        ))}
      </select>
    </span>
  );
}

/** Turns between grain side and flesh side. */
export function TurnOver() {
  return (
    <button type="button" aria-pressed={turned.value} onClick={turnOver}>
      Turn over
    </button>
  );
}

function measured(): string {
  const length = lengthOf(ends.value, shown.value);
  if (length !== undefined) return `Measured: ${sayLength(length, view.value?.units ?? "mm")}`;
  return ends.value.length === 0
    ? "Touch two points of one piece, or choose two of its parts from the list."
    : "Now the other end, on the same piece.";
}

/** Labels are letters of about 2.5 mm: below this scale they are too small to read, CSS px to the mm. */
const READABLE = 3;

function labelsSaid(): string {
  if (!labelsOn.value) return "";
  if (labelTrouble.value !== "") return `The sizes can't be drawn: ${labelTrouble.value}`;
  if (labelled.value?.text !== order.value?.text) return "Drawing the sizes …";
  return eyeNow.value.scale < READABLE ? "Zoom in to read the sizes." : "";
}

/** What is done to the drawing. */
export function Tools() {
  return (
    <>
      <fieldset class="leather-tools" aria-label="The drawing">
        <ChoosePiece />
        <button type="button" onClick={() => zoomBy(ZOOM_STEP)}>
          Larger
        </button>
        <button type="button" onClick={() => zoomBy(1 / ZOOM_STEP)}>
          Smaller
        </button>
        <button type="button" onClick={fitAll}>
          All of it
        </button>
        <TurnOver />
        <button type="button" aria-pressed={measuring.value} onClick={toggleMeasuring}>
          Measure
        </button>
        <button type="button" aria-pressed={labelsOn.value} onClick={toggleLabels}>
          Sizes on it
        </button>
      </fieldset>
      <p class="leather-side">{turned.value ? "Flesh side up: seen mirrored." : "Grain side up."}</p>
    </>
  );
}

/** What the drawing says; below it, so that words that come and go don't move it under a finger. */
export function DrawingSaid() {
  return (
    <p class="leather-said" role="status">
      {[measuring.value ? measured() : "", labelsSaid()].filter(Boolean).join(" ")}
    </p>
  );
}
