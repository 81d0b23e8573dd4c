// `eval`: a formula's value with its unit, for one formula or for each line of standard input. In one answer, a formula that
// fails is bad input; among lines, it is answered in its place and the others go on.

import {
  type Book,
  cellData,
  type Diagnostic,
  type Evaluated,
  evaluate,
  isError,
  type Template,
  unitSymbol,
} from '../../engine/index.ts';
import type { Given } from './arguments.ts';
import { openWorkbook, startWorkbook } from './workbook-files.ts';
import { onOneLine, refuse, type World } from './world.ts';

export async function evaluateFormulas({ words, values, flags }: Given, world: World): Promise<number> {
  const [formula, second] = words;
  if (formula === undefined) return refuse('Give a formula in quotes, or - to read formulas from standard input.');
  if (second !== undefined) return refuse('Put the whole formula in quotes: more than one word came after eval.');
  const file = values.get('in');
  const book =
    file === undefined
      ? startWorkbook(EMPTY, { ...NOTHING, today: world.today }, world)
      : await openWorkbook(file, world);
  const json = flags.has('json');
  const write = json ? asJson : asText;
  if (formula === '-') {
    for await (const line of world.lines()) world.out(`${write(book, evaluate(book, line), line)}\n`);
    return 0;
  }
  const answer = evaluate(book, formula);
  const why = whyNot(answer, formula);
  if (why === undefined || json) world.out(`${write(book, answer, formula)}\n`);
  return why === undefined ? 0 : refuse(file === undefined ? why : `${file}: ${why}`);
}

/** No tables: formulas of constants and functions alone. */
const EMPTY: Template = { name: 'empty', version: 1, sheets: [], rows: {} };
const NOTHING = { title: 'Nothing', units: 'us', currency: 'USD', rows: {} } as const;

function whyNot(answer: Evaluated, formula: string): string | undefined {
  if (!answer.ok) return onOneLine(diagnosticInWords(answer.diagnostic, formula));
  return isError(answer.value) ? onOneLine(answer.value.why) : undefined;
}

/** The sentence, with the part of the formula it is about where that isn't all of it. */
export function diagnosticInWords({ why, from, to }: Diagnostic, formula: string): string {
  const part = formula.slice(from, to).trim();
  return part === '' || part === formula.trim() || why.includes(part) ? why : `${why} It is about “${part}”.`;
}

function asText(_: Book, answer: Evaluated, formula: string): string {
  const why = whyNot(answer, formula);
  if (why !== undefined || !answer.ok) return `Error: ${why}`;
  return answer.value === null ? 'blank' : onOneLine(answer.shown);
}

function asJson(book: Book, answer: Evaluated, formula: string): string {
  if (!answer.ok)
    return JSON.stringify({ error: 'formula', why: onOneLine(diagnosticInWords(answer.diagnostic, formula)) });
  const { value, type } = answer;
  if (isError(value)) return JSON.stringify({ error: value.error, why: onOneLine(value.why) });
  return JSON.stringify({ value: cellData(book, value, type), unit: unitSymbol(type), type: type.kind });
}
