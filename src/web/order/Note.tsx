import { pick } from "../actions.ts";
import { picked } from "../state.ts";
import { chosen } from "./drafts.ts";
import { goTo, noteId } from "./reading.ts";
import { current, marked, partOf, pickedSize, type Shown, values } from "./shown.ts";
import { wayBack } from "./Value.tsx";

/** What stands in the margin: about the value that is touched, or how a size on the leather came about. */
export function Note() {
  const what = picked.value;
  if (what?.what === "field") {
    const shown = values.value.get(what.key);
    return shown ? <FieldNote shown={shown} /> : null;
  }
  if (what?.what === "size" || what?.what === "part") return <CameAbout />;
  return null;
}

const back = (key: string) => (e: KeyboardEvent) => {
  if (e.key === "Escape") goTo(key);
};

function FieldNote({ shown }: { readonly shown: Shown }) {
  const { field } = shown;
  const away = wayBack(shown);
  return (
    <aside
      class="note"
      id={noteId(field.key)}
      tabIndex={-1}
      aria-label={`About ${field.label}`}
      onKeyDown={back(field.key)}
    >
      <Away />
      <h3>{field.label}</h3>
      <p>{field.means}</p>
      <dl>
        <Line says="Allowed" text={field.allowed} />
        <Line says="Default" text={field.origin} />
        <Line says="Stands as" text={shown.given ? "set in this order" : ""} />
      </dl>
      {away === undefined ? null : (
        <button type="button" onClick={() => void chosen(field.key, undefined).then(() => goTo(field.key))}>
          {away}
        </button>
      )}
      <Feeds feeds={field.feeds} />
      <p class="hint">F2 steps from the value into this note, Escape back to it.</p>
    </aside>
  );
}

function Away() {
  return (
    <button type="button" class="away" onClick={() => pick(undefined)}>
      Close
    </button>
  );
}

function Line({ says, text }: { readonly says: string; readonly text: string }) {
  if (text === "") return null;
  return (
    <div>
      <dt>{says}</dt>
      <dd>{text}</dd>
    </div>
  );
}

/** A value or a size that moves with another, and what touching it does. */
type Fed = { readonly says: string; readonly go: () => void };

function fedOf(name: string): readonly Fed[] {
  const shown = values.value.get(name);
  if (shown) return [{ says: shown.field.label, go: () => goTo(name) }];
  const now = current.value;
  if (!now) return [];
  const onPieces = now.pieces
    .filter((p) => p.sizes.some((s) => s.name === name))
    .map((p) => ({ says: `${p.name}: ${name}`, go: () => pick({ what: "size", piece: p.id, name }) }));
  if (onPieces.length > 0 || !now.sizes.some((s) => s.name === name)) return onPieces;
  return [{ says: name, go: () => pick({ what: "size", piece: "", name }) }];
}

/** More than these are folded away. */
const AT_ONCE = 6;

function Feeds({ feeds }: { readonly feeds: readonly string[] }) {
  const fed = feeds.flatMap(fedOf);
  if (fed.length === 0) return null;
  const rest = fed.slice(AT_ONCE);
  return (
    <>
      <h4>Moves with it</h4>
      <FedList fed={fed.slice(0, AT_ONCE)} />
      {rest.length === 0 ? null : (
        <details>
          <summary>{rest.length} more</summary>
          <FedList fed={rest} />
        </details>
      )}
    </>
  );
}

function FedList({ fed }: { readonly fed: readonly Fed[] }) {
  return (
    <ul class="fed">
      {fed.map(({ says, go }) => (
        <li key={says}>
          <button type="button" onClick={go}>
            {says}
          </button>
        </li>
      ))}
    </ul>
  );
}

/** What is pointed at on the leather: its name, what it measures, and the lines it came about by. */
function pointedAt():
  | { readonly title: string; readonly says: string; readonly chain: readonly string[] }
  | undefined {
  const what = picked.value;
  const size = pickedSize.value;
  if (size) return { title: size.name, says: size.says, chain: size.chain };
  const part = what?.what === "part" ? partOf(what.piece, what.id) : undefined;
  return part && { title: part.says, says: "", chain: part.chain ?? [] };
}

function CameAbout() {
  const at = pointedAt();
  if (!at) return null;
  const from = [...marked.value].flatMap((key) => values.value.get(key) ?? []);
  return (
    <aside class="note" aria-label={`How it came about: ${at.title}`}>
      <Away />
      <h3>How it came about</h3>
      <p>
        <strong>{at.title}</strong>
        {at.says === "" ? "" : `: ${at.says}`}
      </p>
      {at.chain.length === 0 ? null : (
        <ol class="chain">
          {at.chain.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ol>
      )}
      {from.length === 0 ? null : <h4>It follows from</h4>}
      <FedList
        fed={from.map((v) => ({ says: `${v.field.label}: ${v.text}`, go: () => goTo(v.field.key) }))}
      />
    </aside>
  );
}
