import { useEffect } from "preact/hooks";
import { order } from "../state.ts";
import { Acts, goBack, goForward } from "./Acts.tsx";
import { forgetDrafts } from "./drafts.ts";
import { Foot } from "./Foot.tsx";
import { RawText } from "./RawText.tsx";
import { reading } from "./reading.ts";
import { Sentences } from "./Sentences.tsx";
import { current } from "./shown.ts";
import { Table } from "./Table.tsx";

/** The order, as it is read aloud: the left half of the page. */
export function OrderPane() {
  const id = order.value?.id;
  useEffect(forgetDrafts, [id]);
  useEffect(() => {
    document.addEventListener("keydown", stepKeys);
    return () => document.removeEventListener("keydown", stepKeys);
  }, []);
  if (id === undefined) return null;
  return (
    <div class="order-pane">
      <h2>{titleOf()}</h2>
      <Acts />
      {reading.value === "sentences" ? <Sentences /> : <Table />}
      <Foot />
      <Fit />
      <RawText />
    </div>
  );
}

function titleOf(): string {
  const now = current.value;
  if (!now) return "The order";
  const article = now.article.charAt(0).toUpperCase() + now.article.slice(1);
  return now.forWhom === "" ? article : `${article} for ${now.forWhom}`;
}

/** Where it fits, or how much it holds. */
function Fit() {
  const lines = current.value?.fit ?? [];
  if (lines.length === 0) return null;
  return (
    <section class="fit" aria-label="How it fits">
      <h3>How it fits</h3>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </section>
  );
}

const TYPED_IN = "input[type=text], input[type=search], input[type=number], textarea";

/** Undo and redo by keys, but for fields that are typed in: those have an undo of their own. */
function stepKeys(e: KeyboardEvent): void {
  if (!(e.ctrlKey || e.metaKey) || e.altKey) return;
  if (e.target instanceof Element && e.target.matches(TYPED_IN)) return;
  const key = e.key.toLowerCase();
  const forward = key === "y" || (key === "z" && e.shiftKey);
  if (!forward && key !== "z") return;
  e.preventDefault();
  if (forward) goForward();
  else goBack();
}
