import type { Fault, TextPlace } from "../model/finding.ts";
import type { GivenText } from "../model/resolve.ts";
import { oneOf } from "../model/words.ts";
import { quote } from "../units/quote.ts";
import { type Branch, nameOf, namesIn, valuesUnder } from "./branch.ts";
import { type Entry, under } from "./entry.ts";
import { unknownName } from "./unknown.ts";

// Which line of an order belongs to which section.

/** What an order gives for one section. */
export type GivenSection = {
  readonly given: Readonly<Record<string, GivenText>>;
  /** Names whose value has a fault that is told already. */
  readonly faulty: readonly string[];
  /** Where the section's name stands. */
  readonly place?: TextPlace;
};

export const NOTHING_GIVEN: GivenSection = { given: {}, faulty: [] };

export type Sorted = {
  readonly sections: ReadonlyMap<string, GivenSection>;
  readonly faults: readonly Fault[];
};

function sectionWanted(entry: Entry, branch: Branch): Fault | undefined {
  const { value, key } = entry;
  const [first = "name"] = namesIn(branch);
  const fault = { key: branch.path, place: entry.place, allowed: oneOf(namesIn(branch)) };
  if (value.kind === "text") {
    const mend = `name what is meant, as in "${key}: { ${first}: … }"`;
    return {
      code: "section-wanted",
      ...fault,
      problem: `got ${quote(value.text)}, where several values by name are wanted`,
      mend,
    };
  }
  if (value.kind === "list") {
    return {
      code: "section-wanted",
      ...fault,
      problem: "got a list, where values by name are wanted",
      mend: `write each with its name, as in "${first}: …", without [ ] or -`,
    };
  }
  return undefined;
}

function valueWanted(entry: Entry, path: string): Fault | undefined {
  const fault = { key: path, place: entry.place };
  switch (entry.value.kind) {
    case "empty":
      return { code: "empty", ...fault, problem: "it is empty", mend: "write a value or take the line out" };
    case "list":
      return {
        code: "value-wanted",
        ...fault,
        problem: "got a list, where one value is wanted",
        mend: "write one value, without [ ] or -",
      };
    case "map":
      return {
        code: "value-wanted",
        ...fault,
        problem: "got several values by name, where one value is wanted",
        mend: `write one value behind "${entry.key}:"`,
      };
    default:
      return undefined;
  }
}

/** Adds names whose value is given under another name: that they are missing would be one fault told twice. */
function withMeant(
  sections: Map<string, GivenSection>,
  meant: readonly string[],
): ReadonlyMap<string, GivenSection> {
  for (const path of meant) {
    const dot = path.lastIndexOf(".");
    const section = path.slice(0, Math.max(0, dot));
    const before = sections.get(section) ?? NOTHING_GIVEN;
    sections.set(section, { ...before, faulty: [...before.faulty, path.slice(dot + 1)] });
  }
  return sections;
}

/** Sorts the lines of an order into the sections of its tree; a section may be left empty. */
export function sortEntries(entries: readonly Entry[], root: Branch): Sorted {
  const sections = new Map<string, GivenSection>();
  const faults: Fault[] = [];
  const meant: string[] = [];
  const sort = (branch: Branch, inside: readonly Entry[], place: TextPlace | undefined): void => {
    const given: [string, GivenText][] = [];
    const faulty: string[] = [];
    for (const entry of inside) {
      const { key, value } = entry;
      const child = branch.branches.find((b) => nameOf(b) === key);
      const isValue = branch.open || branch.settable.includes(key);
      const unknown = child || isValue ? undefined : unknownName(entry, inside, branch, root);
      const fault =
        unknown?.fault ?? (child ? sectionWanted(entry, child) : valueWanted(entry, under(branch.path, key)));
      if (fault) faults.push(fault);
      meant.push(...(unknown?.meant ?? (fault && child ? valuesUnder(child) : [])));
      if (child && value.kind === "map") sort(child, value.entries, entry.keyPlace);
      else if (isValue && value.kind === "text") given.push([key, { text: value.text, place: entry.place }]);
      else if (isValue) faulty.push(key);
    }
    sections.set(branch.path, { given: Object.fromEntries(given), faulty, ...(place ? { place } : {}) });
  };
  sort(root, entries, undefined);
  return { sections: withMeant(sections, meant), faults };
}
