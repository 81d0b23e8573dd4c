// Takes a learned figure over: Learned offers, a person accepts one at a time, and the figure goes into the farm's own column beside
// the library's. Faces list the offers and do the act; nothing is changed unasked.

import { type Book, type Command, type cellView, isError, message, rowId, rowName, rows } from '../../engine/index.ts';
import { type Act, type RowOf, refused, rowAt, rowOf } from './act.ts';

interface Learnable {
  /** Where the learned figure stands: its sheet, its column, the name of the figure. */
  readonly sheet: string;
  readonly figure: string;
  readonly name: string;
  /** The made column that names the row it goes to, that row's sheet, and the column there. */
  readonly of: string;
  readonly to: string;
  readonly column: string;
}

const OF_VARIETIES = { sheet: 'learned-varieties', of: 'variety', to: 'varieties' };
const OF_FARM = { sheet: 'learned-work', of: 'farm', to: 'farm' };
const OF_CROPS = { sheet: 'learned-crops', of: 'crop', to: 'crops' };

const LEARNABLE: readonly Learnable[] = [
  { ...OF_VARIETIES, figure: 'germination', name: 'germination', column: 'own-germination' },
  {
    ...OF_VARIETIES,
    figure: 'warmth-to-harvest',
    name: 'warmth to harvest',
    column: 'own-warmth-to-harvest',
  },
  {
    ...OF_VARIETIES,
    figure: 'warmth-to-harvest-direct',
    name: 'warmth to harvest, sown in the bed',
    column: 'own-warmth-to-harvest-direct',
  },
  { ...OF_CROPS, figure: 'yield', name: 'yield', column: 'own-yield' },
  { ...OF_CROPS, figure: 'field-survival', name: 'plants that stand', column: 'own-field-survival' },
  { ...OF_CROPS, figure: 'picking-rate', name: 'picking rate', column: 'own-picking-rate' },
  { ...OF_CROPS, figure: 'packing-rate', name: 'packing rate', column: 'own-packing-rate' },
  { ...OF_CROPS, figure: 'weeding-time', name: 'weeding time', column: 'own-weeding-time' },
  { ...OF_FARM, figure: 'blocks-sown', name: 'blocks made and sown', column: 'blocks-made-and-sown' },
  { ...OF_FARM, figure: 'plants-set-out', name: 'plants set out', column: 'plants-set-out' },
  { ...OF_FARM, figure: 'row-sown', name: 'row sown', column: 'row-sown' },
];

/** A figure that may be taken over. */
export interface LearnedOffer {
  /** 'Lamplight, germination'. */
  readonly name: string;
  /** The learned figure against the library's, with what it rests on. */
  readonly says: string;
  /** Where the learned figure stands. */
  readonly sheet: string;
  readonly row: string;
  readonly column: string;
}

/** Every figure that was learned and is not yet the farm's own, in the order of the sheets; none where a workbook learns nothing. */
export function learnedOffers(book: Book): readonly LearnedOffer[] {
  return LEARNABLE.flatMap((one) =>
    [...rows(book, one.sheet)].flatMap((slot): LearnedOffer[] => {
      const row = rowAt(book, one.sheet, rowId(book, one.sheet, slot), slot);
      const entry = entryOf(row, one);
      const target = targetOf(book, row, one);
      if (entry === undefined || target === undefined || withUnit(target.view(one.column)) === entry) return [];
      const name = `${rowName(book, one.to, target.slot)}, ${one.name}`;
      return [{ name, says: inWords(row, one), sheet: one.sheet, row: row.id, column: `${one.figure}-learned` }];
    }),
  );
}

/** The commands that take over the figure in a cell of a sheet of learned figures. */
export function takeOver(book: Book, sheet: string, row: string, column: string): Act {
  const one = LEARNABLE.find((each) => each.sheet === sheet && column.startsWith(`${each.figure}-learned`));
  const learned = one === undefined ? undefined : rowOf(book, sheet, row);
  if (one === undefined || learned === undefined) return refused('Nothing was learned here: choose a learned figure.');
  const entry = entryOf(learned, one);
  if (entry === undefined) return refused(`There is no ${one.name} to take over yet: note some in Records first.`);
  const target = targetOf(book, learned, one);
  if (target === undefined) return refused('The row that this was learned of is not there any more.');
  const name = rowName(book, one.to, target.slot);
  const command: Command = { command: 'set cell', sheet: one.to, row: target.id, column: one.column, entry };
  return {
    ok: true,
    commands: [command],
    message: message('learn figure', { figure: one.name, of: name }),
    said: `${name}, ${one.name}: ${entry} is the farm's own figure now.`,
  };
}

/** Whether a column of a sheet holds learned figures. */
export function isLearned(sheet: string, column: string): boolean {
  return LEARNABLE.some((one) => one.sheet === sheet && column === `${one.figure}-learned`);
}

/** The learned figure as a person would type it, in the unit of its column; undefined where there is none. */
function entryOf(row: RowOf, { figure }: Learnable): string | undefined {
  const cell = row.view(`${figure}-learned`);
  if (cell.value === null || isError(cell.value)) return undefined;
  return withUnit(cell);
}

function withUnit({ text, fullUnit }: ReturnType<typeof cellView>): string {
  return text.endsWith(fullUnit) || fullUnit === '' ? text : `${text}${fullUnit === '%' ? '' : ' '}${fullUnit}`;
}

/** The row that the figure goes to. */
function targetOf(book: Book, row: RowOf, { of, to }: Learnable): RowOf | undefined {
  const slot = row.value(of);
  return typeof slot === 'number' ? rowAt(book, to, rowId(book, to, slot), slot) : undefined;
}

function inWords(row: RowOf, { figure }: Learnable): string {
  const shown = (part: string): string => withUnit(row.view(`${figure}-${part}`));
  const count = row.number(`${figure}-observations`) ?? 0;
  return `${shown('library')} in the library, ${shown('noted')} by ${count} of your own; weighted ${shown('learned')} (${shown('learned-low')} to ${shown('learned-high')}), your own counting for ${shown('weight')}.`;
}
