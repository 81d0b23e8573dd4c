// Texts held against each other whatever the case of their letters, and one put in another's place. Pure.

/** In small letters, one sigma for both. */
export function inSmall(text: string): string {
  return text.toLowerCase().replaceAll('ς', 'σ');
}

/**
 * A text with another in place of each `wanted`, which comes in small letters; of a letter that is longer in small ones ('İ') the
 * whole goes. The text itself where nothing is wanted.
 */
export function replacedIn(text: string, wanted: string, instead: string): string {
  if (wanted === '') return text;
  const { small, starts, ends } = inSmallByLetter(text);
  let out = '';
  let rest = 0;
  for (let at = small.indexOf(wanted); at >= 0; at = small.indexOf(wanted, at + wanted.length)) {
    out += text.slice(rest, starts[at]) + instead;
    rest = ends[at + wanted.length - 1] ?? text.length;
  }
  return out + text.slice(rest);
}

/** In small letters, with where the letter that each comes from begins and ends in the text. */
function inSmallByLetter(text: string) {
  const [starts, ends]: [number[], number[]] = [[], []];
  let small = '';
  let start = 0;
  for (const letter of text) {
    const lower = inSmall(letter);
    const end = start + letter.length;
    for (let at = 0; at < lower.length; at += 1) {
      starts.push(start);
      ends.push(end);
    }
    small += lower;
    start = end;
  }
  return { small, starts, ends };
}
