// Pasting into the grid: at once where everything simply fits, else what it would do is shown first. A table always lands in
// as many cells as it has, however the paste was begun.

import { type ColumnView, type Done, type Refusal, rowName } from '../../../../engine/index.ts';
import { givePasteUp, pendingPaste } from '../../dialogs/paste-state.ts';
import { change, UNDO } from '../../store/change.ts';
import { announce, tell } from '../../store/notices.ts';
import { columnOf } from '../../store/sheets.ts';
import { withUnits } from '../../store/units.ts';
import { cellsOf, type Rectangle } from '../ranges.ts';
import { isHead, isRow } from '../row-handle.ts';
import type { SheetCells } from '../sheet-cells.ts';
import { type Block, type BlockCell, height, isTable, readBlock, width } from './block.ts';
import type { CopyActs } from './copy-acts.ts';
import { keptColumns, PasteJob, pasteMessage } from './paste-job.ts';
import type { LandingRow, PastePlan } from './paste-plan.ts';

export class PasteActs {
  readonly #cells: SheetCells;
  readonly #copies: CopyActs;

  constructor(cells: SheetCells, copies: CopyActs) {
    this.#cells = cells;
    this.#copies = copies;
  }

  /** Pastes what the clipboard holds over the selection. `keepFormulas`: never over a formula. */
  paste(text: string, html: string, keepFormulas: boolean): void {
    const area = this.#cells.layer.rectangle();
    const block = readBlock(text, html);
    if (area === undefined || height(block) === 0) return;
    if (!isTable(block) && this.#cells.layer.isWide() && !keepFormulas) {
      this.#fillSelected(block);
      return;
    }
    const { book, sheet } = this.#cells;
    const whole = repeatedOver(block, area);
    const job = new PasteJob({
      book,
      sheet,
      block: whole,
      columns: this.#columnsFrom(area.left),
      rows: (lines) => this.#rowsFrom(area.top, lines),
      cut: this.#copies.cutFor(text),
      keepFormulas,
    });
    const plan = job.plan();
    if (job.questions(plan).length > 0) {
      pendingPaste.value = {
        job,
        skipped: new Set(),
        refused: undefined,
        take: (asked, skipped) => this.#take(asked, asked.plan(), skipped, area),
      };
      return;
    }
    const why = this.#take(job, plan, new Set(), area);
    if (why !== undefined) tell(why, 'refusal');
  }

  /** A single cell goes into every one that is selected. */
  #fillSelected({ cells }: Block): void {
    const [[cell] = []] = cells;
    const { layer } = this.#cells;
    const entry = cell?.text ?? '';
    const corners = layer.rectangles().flatMap(cellsOf);
    const columns = new Set(corners.map(({ column }) => column));
    const commands = corners.flatMap((corner) => {
      const row = this.#cells.row(corner.row);
      const column = this.#cells.column(corner.column);
      const takes =
        column !== undefined && column.role !== 'made' && (column.role !== 'computed' || columns.size === 1);
      return row === undefined || !takes ? [] : [this.#cells.typing(row, column.id, entry)];
    });
    const count = commands.length;
    if (count === 0) tell('Nothing pasted: these cells are filled by their formulas.', 'refusal');
    else this.#cells.write(commands, pasteMessage(count), 'Nothing pasted.', () => announce(pastedWords(count)));
  }

  /** Carries a job out as one step; gives why it could not be. */
  #take(job: PasteJob, plan: PastePlan, skipped: ReadonlySet<string>, area: Rectangle): string | undefined {
    const commands = job.commands(plan, skipped);
    const count = job.count(plan, skipped);
    const kept = keptColumns(plan);
    if (commands.length === 0) {
      return kept.length === 0
        ? 'Nothing of it can be pasted here.'
        : 'Nothing pasted: these cells are filled by their formulas.';
    }
    let why: string | undefined;
    withUnits<Done | Refusal>(
      () => change(commands, pasteMessage(count), { quietly: true }),
      ({ refused }) => refused,
      (done) => {
        if (done.refused) {
          why = `Nothing pasted. ${this.#where(done)}${done.why}`;
          return;
        }
        givePasteUp();
        this.#copies.forgetCut();
        this.#selectPasted(plan, area);
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

  #columnsFrom(left: number): readonly ColumnView[] {
    const { columns } = this.#cells.layer.bounds();
    return Array.from({ length: columns - left }, (_, at) => this.#cells.column(left + at)).filter(
      (column) => column !== undefined,
    );
  }

  /** Rows from a position downwards, heads of groups passed over; past the last, new ones where rows are added by hand. */
  #rowsFrom(top: number, lines: number): readonly LandingRow[] {
    const { layer, sheet } = this.#cells;
    const found: LandingRow[] = [];
    const { rows } = layer.bounds();
    for (let index = top; index < rows && found.length < lines; index += 1) {
      const row = layer.rowAt(index);
      if (row === undefined || isHead(row)) continue;
      if (!isRow(row)) break;
      found.push({ row });
    }
    if (!sheet.entered) return found;
    const there = found.length;
    return [...found, ...Array.from({ length: lines - there }, (_, fresh): LandingRow => ({ fresh }))];
  }

  #selectPasted({ landing }: PastePlan, area: Rectangle): void {
    const { layer } = this.#cells;
    const { rows, columns } = layer.bounds();
    const over = landing.columns.length;
    layer.select({
      anchor: { row: area.top, column: area.left },
      head: {
        row: Math.min(area.top + Math.max(1, landing.rows.length) - 1, rows - 1),
        column: Math.min(area.left + Math.max(1, over) - 1, columns - 1),
      },
    });
    layer.focusAnchor();
  }
}

/** A block again and again over a selection that is a whole multiple of it. */
function repeatedOver(block: Block, { top, bottom, left, right }: Rectangle): Block {
  const [high, wide] = [height(block), width(block)];
  const [rows, across] = [bottom - top + 1, right - left + 1];
  const down = rows % high === 0 ? rows / high : 1;
  const over = across % wide === 0 ? across / wide : 1;
  if (down * over === 1) return block;
  const line = (cells: readonly BlockCell[]): readonly BlockCell[] => {
    const padded = Array.from({ length: wide }, (_, at): BlockCell => cells[at] ?? { text: '' });
    return over === 1 ? cells : Array.from({ length: over }, () => padded).flat();
  };
  const once = block.cells.map(line);
  return { ...block, cells: Array.from({ length: down }, () => once).flat() };
}

function pastedWords(count: number): string {
  return `Pasted ${count === 1 ? 'a cell' : `${count} cells`}.`;
}
