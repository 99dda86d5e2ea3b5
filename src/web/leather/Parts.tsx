import { useSignal } from "@preact/signals";
import type { PagePiece } from "../../job.ts";
import { picked } from "../state.ts";
import { choosePart } from "./deeds.ts";
import { alone, measuring, shown } from "./look.ts";

const isPicked = (piece: string, id: string): boolean => {
  const now = picked.value;
  return now?.what === "part" && now.piece === piece && now.id === id;
};

function PartsOf({ piece, begun }: { readonly piece: PagePiece; readonly begun: boolean }) {
  const open = useSignal(begun);
  return (
    <details
      class="parts"
      open={open.value}
      onToggle={(e) => {
        open.value = e.currentTarget.open;
      }}
    >
      <summary>
        Parts of {piece.name} ({piece.parts.length})
      </summary>
      {open.value ? (
        <ul>
          {piece.parts.map(({ id, says }) => (
            <li key={id}>
              <button
                type="button"
                aria-pressed={isPicked(piece.id, id)}
                onClick={() => choosePart(piece.id, id)}
              >
                {says}
              </button>
            </li>
          ))}
        </ul>
      ) : null}
    </details>
  );
}

/** Everything that can be touched on the drawing, as lists of buttons. */
export function Parts() {
  return (
    <section class="leather-parts" aria-label="Parts of the pieces">
      {measuring.value ? <p>Choose two parts of one piece to measure between them.</p> : null}
      {shown.value.map((piece) => (
        <PartsOf key={piece.id} piece={piece} begun={alone.value !== undefined} />
      ))}
    </section>
  );
}
