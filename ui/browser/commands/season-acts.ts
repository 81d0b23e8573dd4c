// What is done about the season as a whole: a learned figure taken over, the next season begun. Fetched when first asked for
// (season-commands.ts).

import { settings } from '../../../engine/index.ts';
import { type RollOverOptions, rollOver, seasonOf } from '../../../sheets-templates/acts/roll-over.ts';
import { takeOver } from '../../../sheets-templates/acts/take-over.ts';
import { openData } from '../files/read.ts';
import { keepVersionNow } from '../keeping/keep-version.ts';
import { showAndKeep } from '../keeping/showing.ts';
import { switchTo } from '../keeping/switching.ts';
import { change } from '../store/change.ts';
import { tell } from '../store/notices.ts';
import { workbookNow } from '../store/workbook.ts';
import type { Situation } from './situation.ts';

/** A way to begin the next season. */
export interface Next {
  readonly id: string;
  readonly label: string;
  readonly plan: RollOverOptions['plan'];
  readonly along?: RollOverOptions['along'];
}

/** Takes the learned figure in hand over. */
export function takeOverHere({ place, book, rows: [row] }: Situation): void {
  if (book === undefined || row === undefined || place.column === undefined) return;
  const act = takeOver(book, place.sheet, row, place.column);
  if (!act.ok) tell(act.why, 'refusal');
  else if (!change(act.commands, act.message).refused) tell(act.said, 'done');
}

/**
 * Opens the season after this one as a workbook of its own beside it. The ending season is kept as a version first, so that it
 * stays readable whatever is typed into it later.
 */
export async function beginNextSeason({ plan, along = [] }: Next): Promise<void> {
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
