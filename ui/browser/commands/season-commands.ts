// Commands about the season as a whole: a learned figure taken over, the next season begun. Entries of the table. What they do is
// fetched when first asked for.

import { settings, writeWorkbookFile } from '../../../engine/index.ts';
import type { RollOverOptions } from '../../../sheets-templates/index.ts';
import { download, fileName } from '../files/download.ts';
import { keepVersionNow } from '../keeping/keeper.ts';
import { change } from '../store/change.ts';
import { tell } from '../store/notices.ts';
import { workbookNow } from '../store/workbook.ts';
import type { PageCommand } from './command.ts';
import type { Situation } from './situation.ts';

/** Sheets of learned figures are called so, and their learned columns end so. */
function isLearnedCell({ place }: Situation): boolean {
  return place.sheet.startsWith('learned-') && place.column?.endsWith('-learned') === true;
}

async function takeOverHere({ place, book, rows: [row] }: Situation): Promise<void> {
  const { takeOver } = await import('../../../sheets-templates/acts/take-over.ts');
  if (book === undefined || row === undefined || place.column === undefined) return;
  const act = takeOver(book, place.sheet, row, place.column);
  if (!act.ok) tell(act.why, 'refusal');
  else if (!change(act.commands, act.message).refused) tell(act.said, 'done');
}

interface Next {
  readonly id: string;
  readonly label: string;
  readonly plan: RollOverOptions['plan'];
  readonly along?: RollOverOptions['along'];
}

/** The old season is kept as a version first: it stays readable whatever is done on this page next. */
async function beginNextSeason({ plan, along = [] }: Next): Promise<void> {
  const { rollOver, seasonOf } = await import('../../../sheets-templates/acts/roll-over.ts');
  const book = workbookNow();
  if (book === undefined) return;
  const ending = seasonOf(book);
  const rolled = rollOver(book, { season: ending + 1, plan, along });
  if (!rolled.ok) {
    tell(rolled.why, 'refusal');
    return;
  }
  const kept = await keepVersionNow('named', undefined, `End of season ${ending}`).catch(() => false);
  const name = `${fileName(rolled.data.title)}.json`;
  download(writeWorkbookFile(rolled.data), name, 'application/json');
  const stays = kept
    ? `A version of this season is kept as “End of season ${ending}”.`
    : 'No version of this season could be kept here: save it to a file.';
  tell(`Downloaded ${name}. ${rolled.said} ${stays}`, 'done');
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
  { id: 'none', plan: 'none', label: 'Next season, without plantings' },
];

export const SEASON_COMMANDS: readonly PageCommand[] = [
  {
    id: 'take over',
    label: 'Take over the learned figure',
    applies: isLearnedCell,
    refusal: ({ rows }) => (rows.length === 1 ? undefined : 'Select one learned figure to take it over.'),
    menus: { cell: 1 },
    run: (now) => void takeOverHere(now),
  },
  ...NEXT.map(
    (next): PageCommand => ({
      id: `next season ${next.id}`,
      label: next.label,
      applies: ({ book }) => book !== undefined && settings(book).template.name === 'season',
      menus: { workbook: 3 },
      run: () => void beginNextSeason(next),
    }),
  ),
];
