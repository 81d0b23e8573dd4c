// Commands about the season as a whole: a learned figure taken over, the next season begun. Entries of the table. What they do is
// fetched when first asked for.

import { settings } from '../../../engine/index.ts';
import type { RollOverOptions } from '../../../sheets-templates/index.ts';
import { openData } from '../files/read.ts';
import { keepVersionNow } from '../keeping/keep-version.ts';
import { showAndKeep } from '../keeping/showing.ts';
import { switchTo } from '../keeping/switching.ts';
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

/**
 * Opens the season after this one as a workbook of its own beside it. The ending season is kept as a version first, so that it
 * stays readable whatever is typed into it later.
 */
async function beginNextSeason({ plan, along = [] }: Next): Promise<void> {
  const { rollOver, seasonOf } = await import('../../../sheets-templates/acts/roll-over.ts');
  const book = workbookNow();
  if (book === undefined) return;
  const ending = seasonOf(book);
  const rolled = rollOver(book, { season: ending + 1, plan, along });
  const next = rolled.ok ? await openData(rolled.data) : undefined;
  if (!rolled.ok || next === undefined) {
    tell(rolled.ok ? `The season ${ending + 1} could not be opened.` : rolled.why, 'refusal');
    return;
  }
  const kept = await keepVersionNow('named', undefined, `End of season ${ending}`).catch(() => false);
  const stays = kept
    ? `Season ${ending} stays among the workbooks, with a version kept as “End of season ${ending}”.`
    : `No version of season ${ending} could be kept here: save it to a file.`;
  await switchTo(async () => {
    await showAndKeep(next);
    return { ok: true, says: `Opened “${settings(next).title}”. ${rolled.said} ${stays}`, flawed: !kept };
  });
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
