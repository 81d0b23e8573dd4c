// Pasting into the grid: at once where everything simply fits, else what it would do is shown first. A table always lands in
// as many cells as it has, however the paste was begun.

import { type Done, type Refusal, rowName, settings } from '../../../../engine/index.ts';
import { givePasteUp, pendingPaste } from '../../dialogs/paste-state.ts';
import { change, UNDO } from '../../store/change.ts';
import { announce, tell } from '../../store/notices.ts';
import { columnOf } from '../../store/sheets.ts';
import { withFetched } from '../../store/wanted.ts';
import { isRow } from '../row-handle.ts';
import type { SheetCells } from '../sheet-cells.ts';
import { type Block, type BlockCell, height, readBlock } from './block.ts';
import { cut, forgetCut } from './cut.ts';
import { type Laid, laidOver, runsOf } from './landing.ts';
import { htmlTo, sameText } from './last-copied.ts';
import { keptColumns, PasteJob, pasteMessage } from './paste-job.ts';
import type { PastePlan } from './paste-plan.ts';

export class PasteActs {
  readonly #cells: SheetCells;
  readonly #rowsAdded: (ids: readonly string[]) => void;

  /** `rowsAdded` draws rows that a paste made, at once. */
  constructor(cells: SheetCells, rowsAdded: (ids: readonly string[]) => void) {
    this.#cells = cells;
    this.#rowsAdded = rowsAdded;
  }

  /** Pastes what the clipboard holds over the selection. `keepFormulas`: never over a formula. */
  paste(text: string, html: string, keepFormulas: boolean): void {
    const { book, sheet, layer } = this.#cells;
    const block = this.#withCut(readBlock(text, htmlTo(text, html), settings(book).writing?.decimal), text);
    if (layer.rectangle() === undefined || height(block) === 0) return;
    const laid = this.#laid(block);
    if (laid === undefined) {
      tell(
        'Nothing pasted: each of several ranges takes a block only where it is as large, or a whole multiple.',
        'refusal',
      );
      return;
    }
    const job = new PasteJob({ book, sheet, ...laid, keepFormulas });
    const plan = job.plan();
    if (job.questions(plan).length > 0) {
      pendingPaste.value = {
        job,
        skipped: new Set(),
        refused: undefined,
        take: (asked, skipped) => this.#take(asked, asked.plan(), skipped),
      };
      return;
    }
    const why = this.#take(job, plan, new Set());
    if (why !== undefined) tell(why, 'refusal');
  }

  #laid(block: Block): Laid | undefined {
    const { layer, sheet } = this.#cells;
    const { rows, columns } = layer.bounds();
    return laidOver(block, layer.rectangles(), {
      rowAt: (index) => layer.rowAt(index),
      columnAt: (index) => this.#cells.column(index),
      rows,
      columns,
      entered: sheet.entered,
    });
  }

  /** The block that was cut last knows of each cell where it goes from. */
  #withCut(block: Block, text: string): Block {
    const now = cut.peek();
    const isIt = now !== undefined && now.book === this.#cells.book && sameText(now.text, text);
    if (!isIt || block.from?.sheet !== now.lines[0]?.[0]?.sheet) return block;
    const cells = block.cells.map((line, at) =>
      line.map((cell, across) => cell && { ...cell, ...cutAs(now.lines[at]?.[across]) }),
    );
    return { ...block, cells };
  }

  /** Carries a job out as one step; gives why it could not be. */
  #take(job: PasteJob, plan: PastePlan, skipped: ReadonlySet<string>): string | undefined {
    const commands = job.commands(plan, skipped);
    const count = job.count(plan, skipped);
    const kept = keptColumns(plan);
    if (commands.length === 0) {
      return kept.length === 0
        ? 'Nothing of it can be pasted here.'
        : 'Nothing pasted: these cells are filled by their formulas.';
    }
    let why: string | undefined;
    withFetched<Done | Refusal>(
      () => change(commands, pasteMessage(count), { quietly: true }),
      ({ refused }) => refused,
      (done) => {
        if (done.refused) {
          why = `Nothing pasted. ${this.#where(done)}${done.why}`;
          return;
        }
        const select = (): void => this.#selectPasted(plan, done.inserted);
        // A dialog that goes gives the focus back to the cell in which it was asked for.
        if (pendingPaste.peek() === undefined) select();
        else requestAnimationFrame(select);
        givePasteUp();
        forgetCut();
        const left = kept.length === 0 ? '' : ` Left to their formulas: ${kept.join(', ')}.`;
        const out = skipped.size === 0 ? '' : ` Skipped ${skipped.size}.`;
        if (count > 1 || left !== '' || out !== '') tell(`${pastedWords(count)}${out}${left}`, 'done', UNDO);
        else announce('Pasted.');
      },
    );
    return why;
  }

  #where({ row, column: columnId }: Refusal): string {
    const { sheet, book, layer } = this.#cells;
    const column = columnOf(sheet, columnId);
    if (column === undefined) return '';
    const at = layer
      .rowsIn({ top: 0, bottom: layer.bounds().rows - 1, left: 0, right: 0 })
      .find(({ id }) => id === row);
    return `In ${at === undefined ? 'a new row' : rowName(book, sheet.id, at.slot)}, ${column.name}: `;
  }

  /** The cells that were pasted, those of new rows with them, wherever these stand. */
  #selectPasted({ landing }: PastePlan, inserted: readonly string[]): void {
    if (inserted.length > 0) this.#rowsAdded(inserted);
    const { layer } = this.#cells;
    const ids = new Set([...landing.rows.flatMap((into) => ('row' in into ? [into.row.id] : [])), ...inserted]);
    const all = Array.from({ length: layer.bounds().rows }, (_, index) => index);
    const rows = all.filter((index) => ids.has(layer.rowAt(index)?.id ?? ''));
    const across = landing.columns.flatMap((column) => layer.cornerOf(0, column?.id ?? '')?.column ?? []);
    const isNoRow = (index: number): boolean => {
      const row = layer.rowAt(index);
      return row === undefined || !isRow(row);
    };
    const ranges = runsOf(rows, isNoRow).flatMap(({ from, to }) =>
      runsOf(across, () => false).map((columns) => ({
        anchor: { row: from, column: columns.from },
        head: { row: to, column: columns.to },
      })),
    );
    // The last is the one in hand: where they are several, the first.
    if (ranges.length > 0) layer.setRanges([...ranges.slice(1), ...ranges.slice(0, 1)]);
    layer.focusAnchor();
  }
}

function cutAs(from: BlockCell['cut']): Pick<BlockCell, 'cut'> {
  return from === undefined ? {} : { cut: from };
}

function pastedWords(count: number): string {
  return `Pasted ${count === 1 ? 'a cell' : `${count} cells`}.`;
}
