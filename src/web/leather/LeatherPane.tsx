import { useSignalEffect } from "@preact/signals";
import { useEffect, useErrorBoundary } from "preact/hooks";
import { showPiece, showWay } from "../actions.ts";
import { picked, shownPiece, view, type Way, way } from "../state.ts";
import { Flat } from "./Flat.tsx";
import { Folded } from "./Folded.tsx";
import { LifeSize } from "./LifeSize.tsx";
import { trouble } from "./look.ts";
import { OnPaper } from "./OnPaper.tsx";
import { Parts } from "./Parts.tsx";
import { PickedSaid } from "./PickedSaid.tsx";
import { Sizes } from "./Sizes.tsx";
import { Ways } from "./Ways.tsx";

const LOOKS = {
  flat: Flat,
  folded: Folded,
  "on paper": OnPaper,
  "life size": LifeSize,
} as const satisfies Record<Way, unknown>;

/** The way that is chosen; a fault of ours in it breaks nothing else of the page. */
function Looked() {
  const [thrown, again] = useErrorBoundary();
  useEffect(
    () => () => {
      trouble.value = undefined;
    },
    [],
  );
  const Look = LOOKS[way.value];
  const fault: unknown = thrown ?? trouble.value;
  if (fault === undefined) return <Look />;
  const retry = (): void => {
    trouble.value = undefined;
    again();
  };
  return (
    <div class="leather-broken" role="alert">
      <p>The leather can't be drawn; this is a fault of ours. The order is safe.</p>
      <p>{fault instanceof Error ? fault.message : String(fault)}</p>
      <button type="button" onClick={retry}>
        Draw it again
      </button>
    </div>
  );
}

/** The piece of what is picked; undefined for the whole, or for a value of the order. */
function pieceOfPicked(): string | undefined {
  const now = picked.value;
  if (!now || now.what === "field") return undefined;
  return (now.what === "finding" ? view.peek()?.findings[now.index]?.piece : now.piece) || undefined;
}

/** What is picked is to be seen: on the flat leather, and not behind another piece shown alone. */
function usePickedInSight(): void {
  useSignalEffect(() => {
    const piece = pieceOfPicked();
    if (piece === undefined) return;
    const shown = shownPiece.peek();
    if (shown !== undefined && shown !== piece) showPiece(piece);
    if (way.peek() === "folded" || way.peek() === "on paper") showWay("flat");
  });
}

/** The leather: the pieces in one of the ways to look at them, and their sizes in words. */
export function LeatherPane() {
  usePickedInSight();
  if (view.value === undefined)
    return <p class="leather leather-empty">The leather is shown as soon as the order can be read.</p>;
  return (
    <div class="leather">
      <Looked key={way.value} />
      <Ways />
      <PickedSaid />
      {way.value === "flat" ? <Parts /> : null}
      <Sizes />
    </div>
  );
}
