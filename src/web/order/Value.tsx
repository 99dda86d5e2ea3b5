import type { TargetedKeyboardEvent } from "preact";
import { pick } from "../actions.ts";
import { chosen, committed, drafts, faultsTold, restored, typed, UNITS } from "./drafts.ts";
import { stepIntoNote, valueId } from "./reading.ts";
import { current, marked, type Shown, values } from "./shown.ts";

/** Where a value stands decides who names it: in the table its row's label, in a sentence the field itself. */
type Props = { readonly name: string; readonly labelled?: boolean };

export const faultId = (key: string): string => `fault-${key}`;
const aboutId = (key: string): string => `about-${key}`;

const FLAG = ["yes", "no"];
/** What an optional value that is left out reads as. */
export const LEFT_OUT = "not said";

const classesOf = (shown: Shown, wrong: boolean): string =>
  [
    "value",
    shown.given ? "value-set" : "value-quiet",
    ...(wrong ? ["value-wrong"] : []),
    ...(marked.value.has(shown.field.key) ? ["value-marked"] : []),
  ].join(" ");

/** One value of the order: a field that is as wide as what stands in it. */
export function Value({ name, labelled }: Props) {
  const shown = values.value.get(name);
  if (!shown) return <em>{name}</em>;
  const { field } = shown;
  const wrong = faultsTold(name).length > 0;
  const common: Common = {
    id: valueId(name),
    class: classesOf(shown, wrong),
    "aria-describedby": wrong ? `${faultId(name)} ${aboutId(name)}` : aboutId(name),
    onFocus: () => pick({ what: "field", key: name }),
    ...(labelled ? {} : { "aria-label": field.label }),
    ...(wrong ? { "aria-invalid": true } : {}),
  };
  const isChoice = field.kind === "choice" || field.kind === "flag";
  return (
    <>
      {isChoice ? <Choice shown={shown} common={common} /> : <Typed shown={shown} common={common} />}
      <Unit shown={shown} />
      <span id={aboutId(name)} hidden>
        {aboutOf(shown)}
      </span>
    </>
  );
}

/** What a bare number means, said behind it: the order is to be read aloud. */
function Unit({ shown: { field, text } }: { readonly shown: Shown }) {
  const units = current.value?.units;
  const bare = BARE.test(drafts.value.get(field.key)?.text ?? text);
  if (!bare || units === undefined || !field.label.endsWith(`, ${LENGTH_WORDS[units]}`)) return null;
  return <span class="unit"> {units}</span>;
}

const BARE = /^[\d\s./½¼¾⅛⅜⅝⅞]*\d[\d\s./½¼¾⅛⅜⅝⅞]*$/;
const LENGTH_WORDS = { in: "inches", mm: "millimetres", cm: "centimetres" } as const;

/** What a screen reader adds to a field's name. */
const aboutOf = ({ field, given }: Shown): string =>
  [
    field.means,
    field.allowed === "" ? "" : `Allowed: ${field.allowed}`,
    given ? "Set in this order" : field.origin === "" ? "" : `Default: ${field.origin}`,
  ]
    .filter((s) => s !== "")
    .join(". ");

/** What a field of either kind has. */
type Common = {
  readonly id: string;
  readonly class: string;
  readonly "aria-describedby": string;
  readonly onFocus: () => void;
  readonly "aria-label"?: string;
  readonly "aria-invalid"?: true;
};
type Control = { readonly shown: Shown; readonly common: Common };

/** Fields narrower than this are hard to hit. */
const NARROWEST = 3;

function Typed({ shown, common }: Control) {
  const { key } = shown.field;
  const text = drafts.value.get(key)?.text ?? shown.text;
  const width = Math.max(NARROWEST, text.length, text === "" ? LEFT_OUT.length : 0);
  return (
    <input
      {...common}
      type="text"
      autocomplete="off"
      autocapitalize="off"
      spellcheck={false}
      size={width}
      value={text}
      placeholder={LEFT_OUT}
      onInput={(e) => typed(key, e.currentTarget.value)}
      onBlur={() => void committed(key)}
      onKeyDown={(e) => keyDown(e, key)}
    />
  );
}

function keyDown(e: TargetedKeyboardEvent<HTMLElement>, key: string): void {
  if (e.key === "Enter") void committed(key);
  else if (e.key === "Escape") void restored(key);
  else if (e.key === "F2" && stepIntoNote(key)) e.preventDefault();
}

/** The words that can be chosen; one that can't be, but stands in the text, is kept in sight. */
function optionsOf({ field, text }: Shown): readonly string[] {
  const allowed = field.choices.length === 0 && field.kind === "flag" ? FLAG : field.choices;
  return text === "" || allowed.includes(text) ? allowed : [text, ...allowed];
}

/** What taking the value out is called; undefined where it must be given. */
export function wayBack({ field, given }: Shown): string | undefined {
  // Without its units an order's bare numbers would mean something else.
  if (!given || field.key === UNITS) return undefined;
  if (field.optional) return "Leave it out";
  return field.origin === "" ? undefined : "Back to the default";
}

function Choice({ shown, common }: Control) {
  const { key, optional } = shown.field;
  const text = drafts.value.get(key)?.text ?? shown.text;
  const back = wayBack(shown);
  const silent = back?.toLowerCase() ?? (optional || text === "" ? LEFT_OUT : undefined);
  const choose = (value: string): void => void chosen(key, value === "" ? undefined : value);
  return (
    <select
      {...common}
      value={text}
      onChange={(e) => choose(e.currentTarget.value)}
      onKeyDown={(e) => {
        if (e.key === "F2" && stepIntoNote(key)) e.preventDefault();
      }}
    >
      {optionsOf(shown).map((word) => (
        <option key={word} value={word} selected={word === text}>
          {word}
        </option>
      ))}
      {silent === undefined ? null : (
        <option value="" selected={text === ""}>
          {silent}
        </option>
      )}
    </select>
  );
}

/** What is wrong with a value, beside it. */
export function Faults({ name }: { readonly name: string }) {
  const told = faultsTold(name);
  if (told.length === 0) return null;
  return (
    <p class="fault" id={faultId(name)}>
      <strong>Not right:</strong> {told.join(" ")}
    </p>
  );
}
