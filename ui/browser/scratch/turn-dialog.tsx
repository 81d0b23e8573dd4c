// A sum that has proved itself turns into a column: which sheet gets it, what the column is called, its formula as the workbook
// has it and what it gives in the row for which the sum was tried; or why it can't be one.

import { useId, useMemo, useState } from 'preact/hooks';
import { message, sheetViews, type Workbook } from '../../../engine/index.ts';
import { cellName } from '../../scratch/addresses.ts';
import type { ScratchRoom } from '../../scratch/room.ts';
import { sumAsColumn } from '../../scratch/sum-as-column.ts';
import { sheetsNamed } from '../../scratch/translate.ts';
import { Dialog } from '../dialogs/dialog.tsx';
import { Refused } from '../own/refused.tsx';
import { change } from '../store/change.ts';
import { tell } from '../store/notices.ts';
import { goTo } from '../store/selection.ts';
import { entryAt, hand, type PaperName, turning } from './paper-hand.ts';

interface TurnProps {
  readonly book: Workbook;
  readonly room: ScratchRoom;
  readonly paper: PaperName;
}

export function TurnDialog({ book, room, paper }: TurnProps) {
  const cell = cellName(hand.value);
  const place = {
    paper: paper.id,
    cell,
    entryAt: (one: string): string | null => book.document.papers.entry(paper.id, one),
  };
  const named = sheetsNamed(room, place);
  const sheets = sheetViews(book);
  const [sheet, choose] = useState(named[0] ?? sheets.find(({ oneRow }) => !oneRow)?.id ?? '');
  const [name, write] = useState(labelBeside(book));
  const [refused, refuse] = useState<string | undefined>(undefined);
  const id = useId();
  // Tried on a branch, which takes a while: once a sheet, not at every letter of the name.
  const answer = useMemo(() => sumAsColumn(book, room, place, sheet), [book, room, sheet, cell, book.document.program]);
  const leave = (): void => {
    turning.value = false;
  };
  const take = (): void => {
    const column = name.trim();
    const commands = [{ command: 'add formula', sheet, name: column, formula: answer.formula }] as const;
    const done = change(commands, message('sum to column', { cell, paper: paper.name, column }), { quietly: true });
    if (done.refused) {
      refuse(done.why);
      return;
    }
    leave();
    tell(`${column} is a column of ${sheets.find((one) => one.id === sheet)?.name ?? ''} now.`, 'done', {
      label: 'Go there',
      run: () => goTo(sheet),
    });
  };
  return (
    <Dialog
      id="turn-sum"
      title={`Turn ${cell} into a column`}
      takes="Add the column"
      canTake={answer.ok && name.trim() !== ''}
      class="scratch-turn"
      onTake={take}
      onLeave={leave}
    >
      <label class="scratch-field" for={`${id}-sheet`}>
        <span>Sheet</span>
        <select
          id={`${id}-sheet`}
          value={sheet}
          onChange={({ currentTarget }) => {
            choose(currentTarget.value);
            refuse(undefined);
          }}
        >
          {[...sheets]
            .sort((a, b) => Number(named.includes(b.id)) - Number(named.includes(a.id)))
            .map((one) => (
              <option key={one.id} value={one.id}>
                {one.name}
              </option>
            ))}
        </select>
      </label>
      <label class="scratch-field" for={`${id}-name`}>
        <span>Name of the column</span>
        <input
          id={`${id}-name`}
          value={name}
          onInput={({ currentTarget }) => {
            write(currentTarget.value);
            refuse(undefined);
          }}
        />
      </label>
      <Refused why={refused} />
      {answer.formula === '' ? null : <output class="scratch-formula">={answer.formula}</output>}
      <p role="status" class={answer.ok ? '' : 'is-fault'}>
        {answer.ok ? answer.said : answer.why}
      </p>
    </Dialog>
  );
}

/** The text before the cell or above it, which is most often what the sum is called. */
function labelBeside(book: Workbook): string {
  const { row, column } = hand.peek();
  const texts = [
    column > 0 ? entryAt(book, { row, column: column - 1 }) : '',
    row > 0 ? entryAt(book, { row: row - 1, column }) : '',
  ];
  return texts.find((text) => /^\p{L}/u.test(text))?.trim() ?? '';
}
