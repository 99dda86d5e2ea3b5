import type { PagePiece, PageSize } from "../../job.ts";
import { pick } from "../actions.ts";
import { picked, view } from "../state.ts";
import { shown } from "./look.ts";

type Rows = { readonly piece: string; readonly sizes: readonly PageSize[] };

const isPicked = (piece: string, name: string): boolean => {
  const now = picked.value;
  return now?.what === "size" && now.piece === piece && now.name === name;
};

/** Labels of the order's values, by their keys. */
const labels = (): ReadonlyMap<string, string> =>
  new Map((view.value?.groups ?? []).flatMap((g) => g.fields.map((f): [string, string] => [f.key, f.label])));

function SizeRows({ piece, sizes }: Rows) {
  const names = labels();
  return (
    <tbody>
      {sizes.map(({ name, says, from }) => (
        <tr key={name} class={isPicked(piece, name) ? "picked" : undefined}>
          <th scope="row">
            <button
              type="button"
              aria-pressed={isPicked(piece, name)}
              onClick={() => pick({ what: "size", piece, name })}
            >
              {name}
            </button>
          </th>
          <td>{says}</td>
          <td>{from.map((key) => names.get(key) ?? key).join("; ") || "the piece itself"}</td>
        </tr>
      ))}
    </tbody>
  );
}

function SizeTable({ title, piece, sizes }: Rows & { readonly title: string }) {
  if (sizes.length === 0) return null;
  return (
    <table>
      <caption>{title}</caption>
      <thead>
        <tr>
          <th scope="col">size</th>
          <th scope="col">measures</th>
          <th scope="col">comes from</th>
        </tr>
      </thead>
      <SizeRows piece={piece} sizes={sizes} />
    </table>
  );
}

const titleOf = ({ name, count, leather }: PagePiece): string => `${name}: cut ${count}; ${leather}`;

/** The drawing in words: each piece with its sizes and what they come from. Open unless closed by hand. */
export function Sizes() {
  return (
    <details class="sizes" open={true}>
      <summary>Table of sizes</summary>
      {shown.value.map((piece) => (
        <SizeTable key={piece.id} piece={piece.id} title={titleOf(piece)} sizes={piece.sizes} />
      ))}
      <SizeTable piece="" title="The whole" sizes={view.value?.sizes ?? []} />
    </details>
  );
}
