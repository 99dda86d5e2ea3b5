// The papers by name, as the engine knows them; it has a roll of any width besides. A test compares them.

export const PAPERS = ["letter", "legal", "tabloid", "a4", "a3"] as const;

export const isRoll = (paper: string): boolean => /^roll\b/i.test(paper.trim());

/** The width of a roll as it was typed: "roll 610 mm" → "610 mm". */
export const rollWidth = (paper: string): string => paper.trim().replace(/^roll[ :x]*/i, "");
