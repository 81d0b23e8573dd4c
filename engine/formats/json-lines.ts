// On which line of a JSON text a part of it stands, and what JSON.parse takes without a word though it can't be meant: a name
// that stands twice in one group, and groups within groups without end. Called with texts that JSON.parse has taken.

import type { Way } from '../schema/shape.ts';

/** Groups and lists that may stand inside one another; a workbook has a dozen. */
const DEEPEST = 64;

interface Part {
  /** Groups and lists around it. */
  readonly depth: number;
  /** Its name in a group, its place in a list; undefined for the whole. */
  readonly key: string | number | undefined;
  readonly at: number;
}

interface Around {
  readonly isList: boolean;
  index: number;
  name: string | undefined;
}

/** Every value in the text, in order. */
function* partsOf(text: string): Generator<Part> {
  const around: Around[] = [];
  let at = 0;
  while (at < text.length) {
    const letter = text[at];
    const inside = around.at(-1);
    switch (letter) {
      case '}':
      case ']':
        around.pop();
        at += 1;
        continue;
      case ',':
        if (inside !== undefined) {
          inside.index += 1;
          inside.name = undefined;
        }
        at += 1;
        continue;
      case ':':
      case ' ':
      case '\t':
      case '\n':
      case '\r':
        at += 1;
        continue;
    }
    if (inside !== undefined && !inside.isList && inside.name === undefined) {
      const end = endOfText(text, at);
      inside.name = nameIn(text.slice(at, end));
      at = end;
      continue;
    }
    yield { depth: around.length, key: inside?.isList === true ? inside.index : inside?.name, at };
    if (letter === '{' || letter === '[') {
      around.push({ isList: letter === '[', index: 0, name: undefined });
      at += 1;
    } else at = letter === '"' ? endOfText(text, at) : endOfWord(text, at);
  }
}

/** Behind the quotation mark that closes the text which begins here. */
function endOfText(text: string, from: number): number {
  let at = from;
  for (;;) {
    at = text.indexOf('"', at + 1);
    if (at < 0) return text.length;
    let slashes = 0;
    while (text[at - 1 - slashes] === '\\') slashes += 1;
    if (slashes % 2 === 0) return at + 1;
  }
}

function endOfWord(text: string, from: number): number {
  let at = from + 1;
  while (at < text.length && !',]} \t\r\n'.includes(text.charAt(at))) at += 1;
  return at;
}

function nameIn(quoted: string): string {
  return quoted.includes('\\') ? String(JSON.parse(quoted)) : quoted.slice(1, -1);
}

/** What the text says twice, or how it is too deep, in a sentence with its line; undefined where nothing is amiss. */
export function hiddenFault(text: string): string | undefined {
  const names: Set<string>[] = [];
  for (const { depth, key, at } of partsOf(text)) {
    if (depth > DEEPEST) {
      return `Line ${lineAt(text, at)}: more groups stand inside one another than a workbook has: take a whole copy of the file.`;
    }
    names[depth + 1]?.clear();
    if (typeof key !== 'string') continue;
    const here = names[depth] ?? new Set();
    names[depth] = here;
    if (here.has(key)) {
      return `Line ${lineAt(text, at)}: “${key.slice(0, 40)}” stands here a second time, and only one can hold: take one of the two out.`;
    }
    here.add(key);
  }
  return undefined;
}

function lineAt(text: string, at: number): number {
  let line = 1;
  for (let found = text.indexOf('\n'); found >= 0 && found < at; found = text.indexOf('\n', found + 1)) line += 1;
  return line;
}

interface Step {
  readonly next: Map<string | number, Step>;
  line: number | undefined;
}

/** The line of each part, by the way to it; of one that isn't there, the line of what should hold it. */
export function linesOf(text: string, ways: readonly Way[]): readonly number[] {
  const root: Step = { next: new Map(), line: undefined };
  for (const way of ways) {
    let step = root;
    for (const key of way) {
      const next = step.next.get(key) ?? { next: new Map(), line: undefined };
      step.next.set(key, next);
      step = next;
    }
  }
  const steps: (Step | undefined)[] = [];
  let [line, counted] = [1, 0];
  for (const { depth, key, at } of partsOf(text)) {
    const step = key === undefined ? root : steps[depth - 1]?.next.get(key);
    steps[depth] = step;
    if (step === undefined) continue;
    for (let found = text.indexOf('\n', counted); found >= 0 && found < at; found = text.indexOf('\n', counted)) {
      line += 1;
      counted = found + 1;
    }
    step.line = line;
  }
  return ways.map((way) => {
    let [step, last]: [Step | undefined, number] = [root, root.line ?? 1];
    for (const key of way) {
      step = step?.next.get(key);
      last = step?.line ?? last;
    }
    return last;
  });
}
