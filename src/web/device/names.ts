// Names of files on this device.

const ENDING = /\.[^.]*$/;

/** "juniper.yaml" → "juniper". */
export const stemOf = (file: string): string => file.replace(/\.ya?ml$/i, "");

/** Two names that differ in capitals alone are one on many devices. */
const plain = (file: string): string => file.toLowerCase();

/** "juniper.yaml" → "juniper-2.yaml", or the next number that is free. */
export function freeName(file: string, taken: readonly string[]): string {
  const names = new Set(taken.map(plain));
  if (!names.has(plain(file))) return file;
  const ending = ENDING.exec(file)?.[0] ?? "";
  const stem = file.slice(0, file.length - ending.length);
  for (let n = 2; ; n++) {
    const name = `${stem}-${n}${ending}`;
    if (!names.has(plain(name))) return name;
  }
}

/** Longest name that every system takes, with room for a number and what is made of it. */
const LONGEST = 120;
/** Signs that a file's name can't have on one system or another. */
const UNFIT = /[\\/:*?"<>|\p{Cc}\p{Cf}\p{Cs}]/gu;

/**
 * A name that is safe as a file's on every system: the last part of a path, without the signs that some
 * systems refuse, ending in .yaml.
 */
export function safeName(path: string): string {
  const last = path.split(/[\\/]/).at(-1) ?? "";
  const stem = [...stemOf(last).replace(UNFIT, "-")]
    .slice(0, LONGEST)
    .join("")
    .replace(/^[\s.]+|[\s.]+$/g, "");
  return `${stem === "" ? "order" : stem}.yaml`;
}
