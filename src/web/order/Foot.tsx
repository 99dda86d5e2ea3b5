import type { Finding } from "../../job.ts";
import { pick } from "../actions.ts";
import { picked } from "../state.ts";
import { chosen, drafts } from "./drafts.ts";
import { goTo, goToLine } from "./reading.ts";
import { current, faults, keysOfFinding, values } from "./shown.ts";

/** At the foot of the order, like a foreman's notes: what is wrong, what to look at, what is good to know. */
export function Foot() {
  const findings = current.value?.findings ?? [];
  const wrong = faults.value.filter((f) => !drafts.value.get(f.key)?.typing);
  return (
    <section class="foot" aria-label="Foreman's notes">
      <h3>Foreman’s notes</h3>
      <p class="standing">{standing(wrong.length, findings)}</p>
      {wrong.length === 0 ? null : (
        <ul class="faults">
          {wrong.map((fault) => (
            <li key={`${fault.key} ${fault.says}`}>
              <button
                type="button"
                class="fault-button"
                onClick={() => (values.value.has(fault.key) ? goTo(fault.key) : goToLine(fault.place))}
              >
                <strong>Not right:</strong> {fault.says}
              </button>
            </li>
          ))}
        </ul>
      )}
      <ul class="findings">
        {findings.map((finding, index) => (
          <FindingNote
            key={`${finding.rule} ${finding.piece} ${finding.place} ${index}`}
            {...{ finding, index }}
          />
        ))}
      </ul>
    </section>
  );
}

const WORDS = {
  error: "Must not be cut",
  caution: "Look before cutting",
  note: "Good to know",
} as const;

function standing(wrong: number, findings: readonly Finding[]): string {
  if (wrong > 0)
    return "Something in the order is not right. What is shown is how it last was good; it prints again once this is mended.";
  if (findings.some((f) => f.severity === "error"))
    return "It can be looked at, but not printed, until what must not be cut is mended.";
  return findings.length === 0 ? "Nothing to say against it." : "It can be cut; read these first.";
}

/** How many values of a finding are led to. */
const MOST_LED = 3;

function FindingNote({ finding, index }: { readonly finding: Finding; readonly index: number }) {
  const what = picked.value;
  const isPicked = what?.what === "finding" && what.index === index;
  const keys = keysOfFinding(index).slice(0, MOST_LED);
  const { change } = finding;
  return (
    <li class={`finding finding-${finding.severity}`}>
      <button
        type="button"
        class="finding-button"
        aria-pressed={isPicked}
        onClick={() => pick(isPicked ? undefined : { what: "finding", index })}
      >
        <strong>{WORDS[finding.severity]}:</strong> {sayPlace(finding)}
        {sayMessage(finding)}
      </button>
      {finding.severity === "note" ? null : <p class="mend">To mend: {finding.mend}</p>}
      <p class="leads">
        {change && values.value.has(change.dimension) ? (
          <button type="button" onClick={() => void chosen(change.dimension, change.value)}>
            Set {nameOf(change.dimension)} to {change.value}
          </button>
        ) : null}
        {keys.map((key) => (
          <button key={key} type="button" onClick={() => goTo(key)}>
            Go to {nameOf(key)}
          </button>
        ))}
      </p>
    </li>
  );
}

const nameOf = (key: string): string => values.value.get(key)?.field.label ?? key;

/** Where it is, as far as the message doesn't say so itself. */
function sayPlace({ piece, place, message }: Finding): string {
  const name = current.value?.pieces.find((p) => p.id === piece)?.name ?? piece;
  const said = message.toLowerCase();
  const where = [name, place].filter((w) => w !== "" && !said.includes(w.toLowerCase()));
  return where.length === 0 ? "" : `${where.join(", ")}: `;
}

/** The message, with the value and its limit unless it names them already. */
function sayMessage({ message, value, limit }: Finding): string {
  const figures = [
    value === undefined || message.includes(value) ? "" : value,
    limit === undefined ? "" : `allowed: ${limit}`,
  ].filter((s) => s !== "");
  const bare = message.replace(/[.\s]+$/, "");
  return figures.length === 0 ? `${bare}.` : `${bare} (${figures.join("; ")}).`;
}
