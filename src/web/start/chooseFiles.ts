/** The files that were chosen; the same ones may then be chosen again. */
export function chooseFiles(input: HTMLInputElement): readonly File[] {
  const files = [...(input.files ?? [])];
  input.value = "";
  return files;
}
