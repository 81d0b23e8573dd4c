// Commands about the season as a whole: a learned figure taken over, the next season begun. Entries of the table. What they do is
// fetched when first asked for.

import { settings, writeWorkbookFile } from '../../../engine/index.ts';
import type { RollOverOptions } from '../../../sheets-templates/index.ts';
import { download, fileName } from '../files/download.ts';
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

async function beginNextSeason(plan: RollOverOptions['plan']): Promise<void> {
  const { rollOver, seasonOf } = await import('../../../sheets-templates/acts/roll-over.ts');
  const book = workbookNow();
  if (book === undefined) return;
  const rolled = rollOver(book, { season: seasonOf(book) + 1, plan });
  if (!rolled.ok) {
    tell(rolled.why, 'refusal');
    return;
  }
  const name = `${fileName(rolled.data.title)}.json`;
  download(writeWorkbookFile(rolled.data), name, 'application/json');
  tell(`Downloaded ${name}. ${rolled.said} This season stays as it is.`, 'done');
}

const NEXT: readonly (readonly [RollOverOptions['plan'], string])[] = [
  ['own', 'Next season, with the plantings typed by hand'],
  ['all', 'Next season, with all plantings'],
  ['none', 'Next season, without plantings'],
];

export const SEASON_COMMANDS: readonly PageCommand[] = [
  {
    id: 'take over',
    label: 'Take over the learned figure',
    changes: true,
    applies: isLearnedCell,
    refusal: ({ rows }) => (rows.length === 1 ? undefined : 'Select one learned figure to take it over.'),
    menus: { cell: 1 },
    run: (now) => void takeOverHere(now),
  },
  ...NEXT.map(
    ([plan, label]): PageCommand => ({
      id: `next season ${plan}`,
      label,
      applies: ({ book }) => book !== undefined && settings(book).template.name === 'season',
      menus: { workbook: 3 },
      run: () => void beginNextSeason(plan),
    }),
  ),
];
