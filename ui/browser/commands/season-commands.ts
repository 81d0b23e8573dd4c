// Commands about the season as a whole: a learned figure taken over, the next season begun. Entries of the table. What they do is
// fetched when first asked for (season-acts.ts).

import { type Book, settings, sheetViews } from '../../../engine/index.ts';
import { plantingLinks } from '../../../sheets-templates/acts/planting-links.ts';
import { part } from '../store/part.ts';
import type { PageCommand } from './command.ts';
import { withPart } from './fetched.ts';
import type { Next } from './season-acts.ts';
import type { Situation } from './situation.ts';

/** Sheets of learned figures are called so, and their learned columns end so. */
function isLearnedCell({ place }: Situation): boolean {
  return place.sheet.startsWith('learned-') && place.column?.endsWith('-learned') === true;
}

const seasonActs = part(() => import('./season-acts.ts'));

/** Does what is fetched for it; shows a refusal where that doesn't come. */
function carefully(work: (acts: typeof import('./season-acts.ts')) => Promise<void> | void): void {
  withPart(seasonActs(), work);
}

const NEXT: readonly Next[] = [
  { id: 'own', plan: 'own', label: 'Next season, with the plantings typed by hand' },
  { id: 'all', plan: 'all', label: 'Next season, with all plantings' },
  {
    id: 'all along',
    plan: 'all',
    along: ['beds', 'lots'],
    label: 'Next season, with all plantings, their beds and lots',
  },
  {
    id: 'all along with own rows',
    plan: 'all',
    along: ['beds', 'lots', 'own-rows'],
    label: 'Next season, with all plantings, their beds and lots, and own rows that name them',
  },
  { id: 'none', plan: 'none', label: 'Next season, without plantings' },
];

/** Whether rows of a person's own sheets can name plantings. */
function ownRowsName(book: Book): boolean {
  return sheetViews(book).some((sheet) => plantingLinks(sheet).length > 0);
}

export const SEASON_COMMANDS: readonly PageCommand[] = [
  {
    id: 'take over',
    label: 'Take over the learned figure',
    applies: isLearnedCell,
    refusal: ({ rows }) => (rows.length === 1 ? undefined : 'Select one learned figure to take it over.'),
    menus: { cell: 1 },
    run: (now) => carefully((acts) => acts.takeOverHere(now)),
  },
  ...NEXT.map(
    (next): PageCommand => ({
      id: `next season ${next.id}`,
      label: next.label,
      applies: ({ book }) =>
        book !== undefined &&
        settings(book).template.name === 'season' &&
        (next.along?.includes('own-rows') !== true || ownRowsName(book)),
      menus: { workbook: 3 },
      run: () => carefully((acts) => acts.beginNextSeason(next)),
    }),
  ),
];
