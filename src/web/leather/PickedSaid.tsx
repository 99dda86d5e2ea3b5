import { pick } from "../actions.ts";
import { picked, view } from "../state.ts";
import { pointedAt } from "./marks.ts";

/** What is picked: its name and size, and how it came about. */
export function PickedSaid() {
  const { said } = pointedAt(view.value, picked.value);
  return (
    <div class="picked-said" role="status">
      {said ? (
        <>
          <p class="picked-title">{said.title}</p>
          <ul>
            {said.lines.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
          <button type="button" onClick={() => pick(undefined)}>
            Let go
          </button>
        </>
      ) : null}
    </div>
  );
}
