const two = (n: number): string => String(n).padStart(2, "0");

/** A moment as this device's clock has it: "2026-03-01 09:05". */
export function sayWhen(ms: number): string {
  const at = new Date(ms);
  const day = [at.getFullYear(), two(at.getMonth() + 1), two(at.getDate())].join("-");
  return `${day} ${two(at.getHours())}:${two(at.getMinutes())}`;
}
