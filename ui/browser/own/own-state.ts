// One's own: sheets, columns, checks and formulas that a person adds or changes. The acts, each a step that undo takes back. The
// dialogs call them.

import {
  bringSheets,
  type Command,
  type MessageCode,
  message,
  missingHere,
  type RowSource,
  readSheets,
  settings,
  sheetNamed,
  sheetView,
  type Workbook,
  writeSheets,
} from '../../../engine/index.ts';
import { mondayOf } from '../../../sheets-templates/authoring.ts';
import { withPapersFollowing } from '../../scratch/names-followed.ts';
import { download, fileName } from '../files/download.ts';
import { change, UNDO } from '../store/change.ts';
import { tell } from '../store/notices.ts';
import { goTo } from '../store/selection.ts';
import { workbookNow } from '../store/workbook.ts';
import { ownSheets } from './own-open.ts';

/** Does one act, and has formulas of scratch papers follow the names; gives the sentence of a refusal. */
export function act(command: Command, code: MessageCode, parts: Readonly<Record<string, string>>): string | undefined {
  const book = workbookNow();
  const commands = book === undefined ? [command] : withPapersFollowing(book, [command]);
  const done = change(commands, message(code, parts), { quietly: true });
  return done.refused ? done.why : undefined;
}

/** Where the rows of a new sheet come from. */
export type RowsFrom = 'entry' | 'each' | 'weeks' | 'pairs' | 'events';

export interface NewSheet {
  readonly name: string;
  readonly about: string;
  readonly from: RowsFrom;
  /** Ids of the sheets whose rows it follows. */
  readonly first: string;
  readonly second: string;
  /** Ids of the date columns of the first sheet that each give a row. */
  readonly dates: readonly string[];
}

/** Adds a sheet and shows it; gives the sentence of a refusal. */
export function addSheet({ name, about, from, first, second, dates }: NewSheet): string | undefined {
  const book = workbookNow();
  if (book === undefined) return 'No workbook is open.';
  const made = (sheet: string) => ({ id: book.newId(), name: singular(sheetView(book, sheet)?.name ?? '') });
  const rows: RowSource =
    from === 'entry'
      ? { from: 'entry' }
      : from === 'each'
        ? { from: 'each', sheet: first, as: made(first), where: '' }
        : from === 'weeks'
          ? { from: 'span', ...seasonSpan(), step: 'week', as: { id: book.newId(), name: 'Week' } }
          : from === 'events'
            ? eventsOf(book, first, dates)
            : { from: 'pairs', sheets: [first, second], as: [made(first), made(second)], where: '' };
  if (from === 'events' && dates.length === 0) return 'Choose the dates that give a row each.';
  if (from === 'pairs' && first === second) return 'A pair is of two sheets: choose another for one.';
  const refused = act({ command: 'add sheet', name: name.trim(), about: about.trim(), rows }, 'add sheet', {
    sheet: name.trim(),
  });
  if (refused !== undefined) return refused;
  const sheet = sheetNamed(book, name)?.id;
  if (sheet !== undefined) {
    ownSheets.value = { sheet };
    goTo(sheet, undefined, undefined);
  }
  return undefined;
}

/** A row for each date filled in some columns of a sheet: the day, what it is, and the row in which it stands. */
function eventsOf(book: Workbook, sheet: string, dates: readonly string[]): RowSource {
  const view = sheetView(book, sheet);
  const about = { id: book.newId(), name: singular(view?.name ?? '') };
  return {
    from: 'events',
    as: { id: book.newId(), name: 'Date' },
    event: { id: book.newId(), name: 'What' },
    dates: dates.map((column) => {
      const event = view?.columns.find(({ id }) => id === column)?.name ?? column;
      return { sheet, column, event, about };
    }),
  };
}

/** The weeks of the farm's season from their Mondays, as Weeks has them; by ids, so that it holds whatever they are called. */
export function seasonSpan(): { readonly first: string; readonly last: string } {
  const starts = "'#farm'[#farm/season-starts]";
  return { first: mondayOf(starts), last: `${starts} + 52 weeks` };
}

/** What one row of a sheet is called: Beds gives Bed. */
function singular(name: string): string {
  return name.endsWith('s') && name.length > 3 ? name.slice(0, -1) : `Of ${name}`;
}

function listed(names: readonly string[]): string {
  return new Intl.ListFormat('en').format(names);
}

/** Hands own sheets to the person as a file. */
export function saveSheets(sheets: readonly string[]): void {
  const book = workbookNow();
  if (book === undefined) return;
  const names = sheets.flatMap((id) => sheetView(book, id)?.name ?? []);
  const title = names.join(', ');
  const text = writeSheets(book, sheets, title, '');
  download(text, `${fileName(title)}.sheets.json`, 'application/json');
  const said = `Saved ${title} without its rows, from ${settings(book).title}.`;
  const read = readSheets(text);
  const left = read.ok ? Object.values(read.file.elsewhere ?? {}) : [];
  if (left.length === 0) tell(said);
  else tell(`${said} It reads ${listed(left)}, not in the file: another workbook needs that too.`, 'refusal');
}

/** Brings in the sheets of a file's text; gives the sentence of a refusal. */
export function bringIn(text: string): string | undefined {
  const book = workbookNow();
  const read = readSheets(text);
  if (!read.ok) return read.why;
  if (book === undefined) return 'No workbook is open.';
  const { title } = read.file;
  const missing = missingHere(book, read.file.elsewhere ?? {});
  const commands = bringSheets(book, read.file, () => book.newId());
  const done = change(commands, message('bring sheets', { sheets: title }), { quietly: true });
  if (done.refused) return done.why;
  const [first] = commands;
  if (first?.command === 'put sheet') {
    ownSheets.value = undefined;
    goTo(first.sheet.id, undefined, undefined);
  }
  if (missing.length === 0) tell(`Brought in ${title}.`, 'done', UNDO);
  else
    tell(
      `Brought in ${title}. It reads ${listed(missing)}, not here: what rests on that stays empty.`,
      'refusal',
      UNDO,
    );
  return undefined;
}
