import { useSignal } from "@preact/signals";
import { useEffect, useId, useRef } from "preact/hooks";
import {
  CARD,
  type Calibration,
  cardStands,
  holdsOn,
  LEAST_PX_PER_MM,
  MOST_PX_PER_MM,
  type Screen,
  STEP_PX_PER_MM,
} from "./calibration.ts";
import { kept } from "./keptCalibration.ts";

type CalibrateProps = {
  readonly screen: Screen;
  readonly pxPerMm: number;
  readonly matched: (calibration: Calibration) => void;
};

/** The drawn edge lies within the card: its outside is the card's. */
const EDGE_MM = 0.6;

const figure = (n: number): string => `${Math.round(n * 1000) / 1000}`;

function Card({ pxPerMm, stands }: { readonly pxPerMm: number; readonly stands: boolean }) {
  const [width, height] = stands ? [CARD.short, CARD.long] : [CARD.long, CARD.short];
  return (
    <svg
      class="card"
      role="img"
      aria-label="Outline of a bank card"
      width={width * pxPerMm}
      height={height * pxPerMm}
      viewBox={`0 0 ${width} ${height}`}
    >
      <rect
        x={EDGE_MM / 2}
        y={EDGE_MM / 2}
        width={width - EDGE_MM}
        height={height - EDGE_MM}
        rx={CARD.corner - EDGE_MM / 2}
        stroke-width={EDGE_MM}
      />
    </svg>
  );
}

function warning(screen: Screen): string {
  if (holdsOn(kept.value, screen)) return "";
  return kept.value
    ? "The screen or its zoom has changed since the card was matched: match it again before you trust any size here."
    : "Not matched to this screen yet: hold a bank card against it before you trust any size here.";
}

/** The width that a card may take, CSS px. */
function useRoom(): readonly [{ current: HTMLDivElement | null }, number] {
  const box = useRef<HTMLDivElement>(null);
  const room = useSignal(Number.POSITIVE_INFINITY);
  useEffect(() => {
    if (!box.current) return;
    const watcher = new ResizeObserver(([entry]) => {
      if (entry) room.value = entry.contentRect.width;
    });
    watcher.observe(box.current);
    return () => watcher.disconnect();
  }, []);
  return [box, room.value];
}

/** A slider by which a drawn card is made as large as a real one. */
export function Calibrate({ screen, pxPerMm, matched }: CalibrateProps) {
  const help = useId();
  const [box, room] = useRoom();
  const warns = warning(screen);
  const match = (scale: number): void => matched({ pxPerMm: scale, screen });
  return (
    <div class="calibrate" ref={box}>
      <p class={warns === "" ? "calibrate-said" : "calibrate-said warns"} role="status">
        {warns === "" ? `Matched to this screen: ${figure(pxPerMm)} px to the mm.` : warns}
      </p>
      <p id={help}>
        Hold a bank card (85.60 × 53.98 mm) against the outline and move the slider, with the arrow keys for
        the last bit, until they are one size.
      </p>
      <label>
        Size of the card on the screen
        <input
          type="range"
          min={LEAST_PX_PER_MM}
          max={MOST_PX_PER_MM}
          step={STEP_PX_PER_MM}
          value={pxPerMm}
          aria-describedby={help}
          aria-valuetext={`${figure(pxPerMm)} px to the mm`}
          onInput={(e) => match(e.currentTarget.valueAsNumber)}
        />
      </label>
      <p>
        <output>{figure(pxPerMm)} px to the mm</output>{" "}
        {warns === "" ? null : (
          <button type="button" onClick={() => match(pxPerMm)}>
            It matches
          </button>
        )}
      </p>
      <Card pxPerMm={pxPerMm} stands={cardStands(pxPerMm, room)} />
    </div>
  );
}
