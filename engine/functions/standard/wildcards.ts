// Wildcards as OpenFormula has them: ? for one letter, * for any letters, ~ before either for the sign itself. Texts are gone
// through without turning back, so that letters of the text times letters of the pattern are the most that is ever compared.
// Called by text functions and by look-ups (wildcard-rows.ts); calls nothing.

/** Letters that stand next to each other; undefined is any letter. */
type Run = readonly (string | undefined)[];

/** A text's letters with capitals made small; a letter is one Unicode character. */
export function smallLetters(text: string): readonly string[] {
  return Array.from(text, (letter) => letter.toLowerCase());
}

/** The runs of a pattern between its stars. */
function runsOf(wanted: string): readonly Run[] {
  const runs: (string | undefined)[][] = [[]];
  const letters = smallLetters(wanted);
  for (let at = 0; at < letters.length; at += 1) {
    const letter = letters[at];
    const next = letters[at + 1];
    if (letter === '*') runs.push([]);
    else if (letter === '?') runs.at(-1)?.push(undefined);
    else if (letter === '~' && (next === '?' || next === '*' || next === '~')) {
      runs.at(-1)?.push(next);
      at += 1;
    } else runs.at(-1)?.push(letter);
  }
  return runs;
}

function standsAt(run: Run, letters: readonly string[], at: number): boolean {
  if (at < 0 || at + run.length > letters.length) return false;
  for (let k = 0; k < run.length; k += 1) if (run[k] !== undefined && run[k] !== letters[at + k]) return false;
  return true;
}

/** The first place from `from` on at which the run stands, up to `last`; -1 where there is none. */
function placeOf(run: Run, letters: readonly string[], from: number, last: number): number {
  for (let at = from; at <= last; at += 1) if (standsAt(run, letters, at)) return at;
  return -1;
}

/** The last place at which the runs can begin to follow one another to the end of the text at the latest; -1 where they can't. */
function lastPlaceOf(runs: readonly Run[], letters: readonly string[]): number {
  let end = letters.length;
  for (let index = runs.length - 1; index >= 0; index -= 1) {
    const run = runs[index] ?? [];
    let at = end - run.length;
    while (at >= 0 && !standsAt(run, letters, at)) at -= 1;
    if (at < 0) return -1;
    end = at;
  }
  return end;
}

/** The first place (from 0, in letters) from `from` on where the pattern begins, capitals alike; -1 where it does not occur. */
export function wildcardPlace(wanted: string, within: readonly string[], from: number): number {
  const [first = [], ...others] = runsOf(wanted);
  const latest = lastPlaceOf(others, within);
  return latest < 0 ? -1 : placeOf(first, within, from, latest - first.length);
}

/** The letters of a pattern without wildcards but one star at its end, if any; undefined for other patterns. */
export function plainBeginning(
  wanted: string,
): { readonly letters: readonly string[]; readonly goesOn: boolean } | undefined {
  const [first = [], last, ...others] = runsOf(wanted);
  const letters = first.flatMap((letter) => letter ?? []);
  if (letters.length < first.length || others.length > 0 || (last?.length ?? 0) > 0) return undefined;
  return { letters, goesOn: last !== undefined };
}

/** Says of texts whether the whole of one is as the pattern says, capitals alike; the pattern is read once. */
export function fitsWildcards(wanted: string): (within: readonly string[]) => boolean {
  const runs = runsOf(wanted);
  return (within) => fits(runs, within);
}

function fits(runs: readonly Run[], within: readonly string[]): boolean {
  const [first = []] = runs;
  if (!standsAt(first, within, 0)) return false;
  if (runs.length === 1) return first.length === within.length;
  let at = first.length;
  for (const run of runs.slice(1, -1)) {
    at = placeOf(run, within, at, within.length - run.length);
    if (at < 0) return false;
    at += run.length;
  }
  const last = runs.at(-1) ?? [];
  return within.length - last.length >= at && standsAt(last, within, within.length - last.length);
}
