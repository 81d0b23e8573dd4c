// A formula as workbooks keep it: its text as a person wrote it, with ids in place of the names of sheets and columns, so
// that a name may change without touching any formula. [#beds/length] stands for [Length], '#beds' for Beds. Names that
// were not found stay as written. Called by the document; the checker only ever sees names.

import { cutFormula, type Token } from './lexer.ts';
import { bracketed, quoted, tableName } from './printer.ts';
import type { Span } from './tree.ts';

/** A name in a formula's text and the id of the sheet, or of the column ('sheet/column'), that it was found to mean. */
export interface FoundName extends Span {
  readonly id: string;
}

/** What stands at a place of the text, and what is to stand there. */
interface Replacement extends Span {
  readonly text: string;
}

/** The text to keep, from the text as written and the names found in it. */
export function storedFormula(text: string, found: readonly FoundName[]): string {
  return replaced(
    text,
    found.flatMap(({ from, to, id }): Replacement[] => {
      const first = text.charAt(from);
      const isColumn = id.includes('/');
      if (first === '[') return isColumn ? [{ from, to, text: `[#${id}]` }] : [];
      if (first === '"') return isColumn ? [{ from, to, text: `"#${id}"` }] : [];
      return isColumn ? [] : [{ from, to, text: `'#${id}'` }];
    }),
  );
}

/** The text to show: every id by the name that `nameOf` gives for it, and as its last word where there is none any more. */
export function shownFormula(stored: string, nameOf: (id: string) => string | undefined): string {
  if (!stored.includes('#')) return stored;
  const { tokens } = cutFormula(stored, () => false);
  return replaced(
    stored,
    tokens.flatMap((token): Replacement[] => {
      const id = idIn(token);
      if (id === undefined) return [];
      const name = nameOf(id);
      if (token.token === 'text') return name === undefined ? [] : [{ ...token, text: quoted(name) }];
      const said = name ?? id.slice(id.indexOf('/') + 1);
      return [{ ...token, text: token.token === 'bracket' ? bracketed(said) : tableName(said) }];
    }),
  );
}

/** The ids that a kept formula names, each as often as it stands there. */
export function idsIn(stored: string): readonly string[] {
  if (!stored.includes('#')) return [];
  return cutFormula(stored, () => false).tokens.flatMap((token) => idIn(token) ?? []);
}

function idIn(token: Token): string | undefined {
  const written =
    token.token === 'bracket' || token.token === 'quoted'
      ? token.name
      : token.token === 'text' && token.value.includes('/')
        ? token.value
        : '';
  return written.startsWith('#') ? written.slice(1) : undefined;
}

function replaced(text: string, replacements: readonly Replacement[]): string {
  let result = '';
  let at = 0;
  for (const { from, to, text: instead } of replacements.toSorted((a, b) => a.from - b.from)) {
    if (from < at) continue;
    result += text.slice(at, from) + instead;
    at = to;
  }
  return result + text.slice(at);
}
