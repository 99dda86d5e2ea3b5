import type { FieldGroup } from "../../job.ts";
import { picked } from "../state.ts";
import { chosen } from "./drafts.ts";
import { Margin } from "./Margin.tsx";
import { goTo, sought, valueId } from "./reading.ts";
import { current, marked, type Shown, values } from "./shown.ts";
import { Faults, Value, wayBack } from "./Value.tsx";

/** The same order as a plain table, to tab through. */
export function Table() {
  const groups = (current.value?.groups ?? []).map(soughtIn).filter((g) => g.fields.length > 0);
  return (
    <div class="table-reading">
      <p class="sought">
        <label for="sought">Show only what has these words</label>
        <input
          id="sought"
          type="search"
          value={sought.value}
          onInput={(e) => {
            sought.value = e.currentTarget.value;
          }}
        />
      </p>
      {groups.length === 0 ? <p role="status">Nothing in the order has these words.</p> : null}
      {groups.map((group) => (
        <Group key={group.path} group={group} />
      ))}
      <Margin />
    </div>
  );
}

/** A group with those of its fields that have every word sought. */
function soughtIn(group: FieldGroup): FieldGroup {
  const words = sought.value.toLowerCase().split(/\s+/);
  const fields = group.fields.filter(({ key, label, means }) => {
    const own = `${group.title} ${key} ${label} ${means}`.toLowerCase();
    return words.every((word) => own.includes(word));
  });
  return { ...group, fields };
}

function Group({ group }: { readonly group: FieldGroup }) {
  return (
    <table>
      <caption>{group.title}</caption>
      <thead>
        <tr>
          <th scope="col">Name</th>
          <th scope="col">Value</th>
          <th scope="col">Allowed</th>
          <th scope="col">Where it comes from</th>
        </tr>
      </thead>
      <tbody>
        {group.fields.map(({ key }) => {
          const shown = values.value.get(key);
          return shown ? <Row key={key} shown={shown} /> : null;
        })}
      </tbody>
    </table>
  );
}

function Row({ shown }: { readonly shown: Shown }) {
  const { field, given } = shown;
  const isMarked = marked.value.has(field.key);
  const away = wayBack(shown);
  const what = picked.value;
  const isPicked = what?.what === "field" && what.key === field.key;
  return (
    <tr class={`${isMarked ? "row-marked" : ""}${isPicked ? " noted" : ""}`}>
      <th scope="row">
        <label for={valueId(field.key)}>{field.label}</label>
        {isMarked ? <span class="only-heard"> (marked)</span> : null}
      </th>
      <td>
        <Value name={field.key} labelled />
        <Faults name={field.key} />
      </td>
      <td>{field.allowed}</td>
      <td>
        {given ? "set in this order" : field.origin}
        {away === undefined ? null : (
          <button
            type="button"
            aria-label={`${away}: ${field.label}`}
            onClick={() => void chosen(field.key, undefined).then(() => goTo(field.key))}
          >
            {away}
          </button>
        )}
      </td>
    </tr>
  );
}
