// The workbook's columns by names that formulas of a scratch paper can say: Plantings_In_row_spacing_in. The unit in the name is
// the unit of the numbers, whatever the sheet shows just now: the same column is there as Plantings_In_row_spacing_cm too.

import {
  type Book,
  type ColumnView,
  createVocabulary,
  type SheetView,
  sameDimension,
  sheetViews,
  type Unit,
  type Vocabulary,
} from '../../engine/index.ts';

export interface NamedColumn {
  readonly name: string;
  readonly sheet: SheetView;
  readonly column: ColumnView;
  /** What the numbers count in; undefined for texts, dates, links, yes and no. */
  readonly unit: Unit | undefined;
  /** The unit as the name says it; '' where it says none. */
  readonly said: string;
}

interface Standing {
  /** Without its unit. */
  readonly base: string;
  readonly sheet: SheetView;
  readonly column: ColumnView;
}

/** The columns of a workbook by their names, as its sheets stand just now. */
export class ColumnNames {
  readonly #vocabulary: Vocabulary;
  readonly #standing = new Map<string, Standing>();

  constructor(book: Book) {
    this.#vocabulary = createVocabulary({ currency: book.document.program.currency });
    for (const sheet of sheetViews(book)) {
      for (const column of sheet.columns) {
        if (column.type === undefined || column.type.kind === 'record') continue;
        const wanted = `${inName(sheet.name)}_${inName(column.name)}`;
        let base = wanted;
        for (let i = 2; this.#standing.has(base.toLowerCase()); i++) base = `${wanted}_${i}`;
        this.#standing.set(base.toLowerCase(), { base, sheet, column });
      }
    }
  }

  /** Every column once, with the unit it is shown in. */
  all(): readonly NamedColumn[] {
    return [...this.#standing.values()].map(({ base, sheet, column }) => {
      const unit = unitOf(column);
      const said = unit === undefined ? '' : unitInName(unit, this.#vocabulary.currency);
      return { name: said === '' ? base : `${base}_${said}`, sheet, column, unit, said };
    });
  }

  /** What a name stands for; undefined for what names no column, or a unit that is none of it. */
  find(name: string): NamedColumn | undefined {
    const wanted = name.toLowerCase();
    for (let end = wanted.length; end > 0; end = wanted.lastIndexOf('_', end - 1)) {
      const found = this.#standing.get(wanted.slice(0, end));
      if (found === undefined) continue;
      const { sheet, column } = found;
      const said = name.slice(end + 1);
      const shown = unitOf(column);
      if (shown === undefined) {
        if (said === '') return { name, sheet, column, unit: undefined, said };
        continue;
      }
      const unit = this.#unitNamed(said, shown);
      if (unit !== undefined) return { name, sheet, column, unit, said };
    }
    return undefined;
  }

  /** What a column is called, with the unit that a name had for it; undefined where it is not here. */
  nameOf({ sheet, column, said }: NamedColumn): string | undefined {
    const isIt = (one: { readonly sheet: SheetView; readonly column: ColumnView }): boolean =>
      one.sheet.id === sheet.id && one.column.id === column.id;
    const base = [...this.#standing.values()].find(isIt)?.base;
    if (base === undefined) return undefined;
    return said === '' ? base : `${base}_${said}`;
  }

  #unitNamed(said: string, shown: Unit): Unit | undefined {
    const { currency, find } = this.#vocabulary;
    if (said.toLowerCase() === unitInName(shown, currency).toLowerCase()) return shown;
    if (said === '') return undefined;
    const symbol = said
      .replace(/^per_/i, '1/')
      .replace(/_per_/gi, '/')
      .replace(new RegExp(`^${currency}(?![A-Za-z])`, 'i'), 'money')
      .replace(/^percent$/i, '%')
      .replaceAll('_', ' ');
    const unit = find(symbol);
    const alike = unit !== undefined && sameDimension(unit.dimension, shown.dimension) && unit.symbol !== '';
    return alike ? unit : undefined;
  }
}

function unitOf({ type }: ColumnView): Unit | undefined {
  return type?.kind === 'number' || type?.kind === 'temperature' ? type.unit : undefined;
}

/** 'In-row spacing' is In_row_spacing. */
function inName(name: string): string {
  const letters = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replaceAll('%', ' percent ')
    .replace(/[^\p{L}\p{N}]+/gu, '_')
    .replace(/^_+|_+$/g, '');
  return /^\p{L}/u.test(letters) ? letters : `_${letters}`;
}

/** 'lb/ft2' is lb_per_ft2, '%' percent, money the code of the currency; '' for a plain number. */
function unitInName({ symbol }: Unit, currency: string): string {
  return symbol
    .replaceAll('%', 'percent')
    .replace(/\bmoney\b/g, currency)
    .replace(/^1\//, 'per_')
    .replaceAll('/', '_per_')
    .replace(/[^\p{L}\p{N}]+/gu, '_')
    .replace(/^_+|_+$/g, '');
}
