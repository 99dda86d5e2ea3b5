import type { PageView } from "../../job.ts";
import { redo, undo } from "../actions.ts";
import { canRedo, canUndo } from "../state.ts";
import { chosen, forgetDrafts, UNITS as UNITS_KEY } from "./drafts.ts";
import { READINGS, reading } from "./reading.ts";
import { current } from "./shown.ts";

type Units = PageView["units"];
const UNITS: readonly { readonly units: Units; readonly says: string }[] = [
  { units: "in", says: "inches" },
  { units: "mm", says: "mm" },
  { units: "cm", says: "cm" },
];

export function goBack(): void {
  forgetDrafts();
  void undo();
}

export function goForward(): void {
  forgetDrafts();
  void redo();
}

/** Undo and redo, the two readings, and the units. */
export function Acts() {
  return (
    <div class="acts">
      <p class="steps">
        <button type="button" disabled={!canUndo.value} aria-keyshortcuts="Control+Z" onClick={goBack}>
          Undo
        </button>
        <button
          type="button"
          disabled={!canRedo.value}
          aria-keyshortcuts="Control+Shift+Z Control+Y"
          onClick={goForward}
        >
          Redo
        </button>
      </p>
      <OneOf
        legend="Read as"
        name="reading"
        words={READINGS.map((r) => ({ value: r, says: r }))}
        chosen={reading.value}
        choose={(r) => {
          reading.value = r;
        }}
      />
      <OneOf
        legend="Units"
        name="units"
        words={UNITS.map(({ units, says }) => ({ value: units, says }))}
        chosen={current.value?.units}
        choose={(u) => void chosen(UNITS_KEY, u)}
      />
    </div>
  );
}

type OneOfProps<T extends string> = {
  readonly legend: string;
  readonly name: string;
  readonly words: readonly { readonly value: T; readonly says: string }[];
  readonly chosen: T | undefined;
  readonly choose: (value: T) => void;
};

/** A few words, one of which holds. */
function OneOf<T extends string>({ legend, name, words, chosen, choose }: OneOfProps<T>) {
  return (
    <fieldset class="one-of">
      <legend>{legend}</legend>
      {words.map(({ value, says }) => (
        <label key={value}>
          <input
            type="radio"
            name={name}
            value={value}
            checked={chosen === value}
            onChange={() => choose(value)}
          />{" "}
          {says}
        </label>
      ))}
    </fieldset>
  );
}
