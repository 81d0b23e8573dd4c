// Wildcards as OpenFormula has them: ? for one letter, * for any letters, ~ before either for the sign itself. Called by
// text functions and by look-ups; calls nothing.

const SPECIAL = /[\\^$.|+()[\]{}]/g;

/** A pattern for a text with wildcards, capitals alike: the whole text, or a part of it from `lastIndex` on. */
export function wildcardPattern(wanted: string, extent: 'whole' | 'part'): RegExp {
  const body = wanted.replace(/~[?*~]|[?*]|[^?*~]+|~/g, (piece) => {
    if (piece === '?') return '.';
    if (piece === '*') return '.*?';
    if (piece.length === 2 && piece.startsWith('~')) return `\\${piece.slice(1)}`;
    return piece.replace(SPECIAL, '\\$&');
  });
  return extent === 'whole' ? new RegExp(`^${body}$`, 'isu') : new RegExp(body, 'gisu');
}
