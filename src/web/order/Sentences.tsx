import type { Sentence } from "../../job.ts";
import { picked } from "../state.ts";
import { Margin } from "./Margin.tsx";
import { keysOf, partsOf } from "./parts.ts";
import { valueId } from "./reading.ts";
import { besides, marked, sentencesRead } from "./shown.ts";
import { Faults, Value } from "./Value.tsx";

/** The order as it would stand in the order book. */
export function Sentences() {
  const read = sentencesRead.value;
  const more = besides.value;
  const noted = notedAt([...read.map(keysOf), more.map((v) => v.field.key)]);
  return (
    <div class="sentences">
      <div class="told">
        {read.map((sentence, k) => (
          <Said key={sentence.text} sentence={sentence} noted={noted === k} />
        ))}
        {more.length === 0 ? null : <Besides noted={noted === read.length} />}
      </div>
      <Margin />
    </div>
  );
}

/** Values that no sentence tells of. */
function Besides({ noted }: { readonly noted: boolean }) {
  return (
    <div class={`said${noted ? " noted" : ""}`}>
      <h3 id="besides">Set besides</h3>
      <ul class="besides" aria-labelledby="besides">
        {besides.value.map(({ field }) => (
          <li key={field.key}>
            <label for={valueId(field.key)}>{field.label}</label> <Value name={field.key} labelled />
            <Faults name={field.key} />
          </li>
        ))}
      </ul>
    </div>
  );
}

/** Beside which sentence the note stands: that of the value touched, or the first that is marked. */
function notedAt(lists: readonly (readonly string[])[]): number | undefined {
  const what = picked.value;
  const isAt = (key: string): boolean =>
    what?.what === "field" ? what.key === key : what?.what !== "finding" && marked.value.has(key);
  const at = lists.findIndex((keys) => keys.some(isAt));
  return at < 0 ? undefined : at;
}

function Said({ sentence, noted }: { readonly sentence: Sentence; readonly noted: boolean }) {
  const keys = keysOf(sentence);
  const isMarked = keys.some((key) => marked.value.has(key));
  return (
    <div class={`said${isMarked ? " said-marked" : ""}${noted ? " noted" : ""}`}>
      <p>
        {isMarked ? <span class="only-heard">Marked: </span> : null}
        {partsOf(sentence.text).map((part) =>
          "key" in part ? <Value key={part.key} name={part.key} /> : part.words,
        )}
      </p>
      {keys.map((key) => (
        <Faults key={key} name={key} />
      ))}
    </div>
  );
}
