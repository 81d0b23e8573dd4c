// Formula text and its tree: parsed with the workbook's units, printed in its canonical form. Used wherever a formula is
// shown or kept.

import { parseFormula } from '../language/parser.ts';
import { printFormula } from '../language/printer.ts';
import type { Tree } from '../language/tree.ts';
import type { Vocabulary } from '../units/vocabulary.ts';

interface Units {
  readonly vocabulary: Vocabulary;
}

/** The tree of a formula's text; undefined where it doesn't read. */
export function reparsed(text: string, { vocabulary }: Units): Tree | undefined {
  const parsed = parseFormula(text, (symbol) => vocabulary.find(symbol) !== undefined);
  return parsed.ok ? parsed.tree : undefined;
}

/** The formula as printed; as typed where it doesn't read. */
export function printed(text: string, units: Units): string {
  const tree = reparsed(text, units);
  return tree === undefined ? text : printFormula(tree);
}
