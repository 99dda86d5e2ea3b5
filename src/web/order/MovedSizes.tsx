import { useEffect, useState } from "preact/hooks";
import { forgetMoved } from "../actions.ts";
import { type Moved, moved } from "../state.ts";

/** How long what moved stays in sight, ms; a pointer or the keyboard on it holds it. */
const MOMENT = 10_000;
/** A screen reader hears it once typing rests so long, ms. */
const CALM = 1_200;
/** More than these are counted, not shown. */
const MOST = 6;

/** "crown cut length" needs no "Crown" before it. */
const nameOf = ({ piece, name }: Moved): string =>
  name.toLowerCase().startsWith(piece.toLowerCase()) ? name : `${piece}, ${name}`;

const inWords = (list: readonly Moved[]): string => {
  const shown = list.slice(0, 3).map((m) => `${nameOf(m)}: ${m.before} to ${m.after}`);
  const rest = list.length - shown.length;
  return [...shown, ...(rest > 0 ? [`and ${rest} more`] : [])].join("; ");
};

/** What changed size elsewhere, before → after, so that the maker learns what pulls on what. */
export function MovedSizes() {
  const list = moved.value;
  const [held, hold] = useState(false);
  const [heard, hear] = useState("");
  useEffect(() => {
    if (list.length === 0 || held) return undefined;
    const timer = setTimeout(forgetMoved, MOMENT);
    return () => clearTimeout(timer);
  }, [list, held]);
  useEffect(() => {
    const timer = setTimeout(() => hear(list.length === 0 ? "" : `Moved with it: ${inWords(list)}`), CALM);
    return () => clearTimeout(timer);
  }, [list]);
  return (
    <>
      <div class="only-heard" role="status">
        {heard}
      </div>
      {list.length === 0 ? null : (
        <div class="moved" onPointerEnter={() => hold(true)} onPointerLeave={() => hold(false)}>
          <h3>Moved with it</h3>
          <ul>
            {list.slice(0, MOST).map((m) => (
              <li key={nameOf(m)}>
                {nameOf(m)}: <span class="before">{m.before}</span> → <strong>{m.after}</strong>
              </li>
            ))}
          </ul>
          {list.length > MOST ? <p>and {list.length - MOST} more</p> : null}
        </div>
      )}
    </>
  );
}
