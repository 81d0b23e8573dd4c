// All that a workbook holds, in one place: the model, the sheets, units and the compiled graph. Made by open.ts, changed by
// changes.ts, read by everything in this room.

import type { Built } from '../recalculation/build.ts';
import type { Model } from '../recalculation/model.ts';
import type { Unit } from '../units/unit.ts';
import { createVocabulary, type Vocabulary } from '../units/vocabulary.ts';
import { yearMonthDay } from '../values/civil.ts';
import { FILLED } from '../values/column.ts';
import type { EntryContext } from '../values/entry.ts';
import type { CellContext } from './cells.ts';
import { compile } from './compile.ts';
import type { WorkbookDeclaration } from './declaration.ts';
import type { Sheet } from './sheet.ts';

export class State implements CellContext {
  readonly model: Model;
  readonly sheets: ReadonlyMap<string, Sheet>;
  readonly vocabulary: Vocabulary;
  readonly currency: string;
  readonly title: string;
  readonly year: WorkbookDeclaration['year'];
  readonly typedUnits: Unit[] = [];
  units: 'us' | 'si';
  built: Built;

  constructor(model: Model, sheets: ReadonlyMap<string, Sheet>, declaration: WorkbookDeclaration) {
    this.model = model;
    this.sheets = sheets;
    this.currency = declaration.currency;
    this.vocabulary = createVocabulary({ currency: declaration.currency });
    this.title = declaration.title;
    this.year = declaration.year;
    this.units = declaration.units;
    this.built = compile(this);
  }

  /** Checks all formulas and builds the graph again. */
  compile(): void {
    this.built = compile(this);
  }

  sheet(name: string): Sheet | undefined {
    return this.sheets.get(name);
  }

  /** How entries are read: the year of dates typed without one, and which comes first, day or month. */
  get entry(): EntryContext {
    return { vocabulary: this.vocabulary, year: this.#entryYear(), dayFirst: this.units === 'si' };
  }

  #entryYear(): number {
    const today = yearMonthDay(this.model.today.values[0] ?? 0).year;
    if (this.year === undefined) return today;
    const column = this.model.tables.get(this.year.sheet)?.columns.get(this.year.column);
    return column !== undefined && column.length > 0 && column.states[0] === FILLED
      ? (column.values[0] ?? today)
      : today;
  }

  /** The number under which a typed unit is kept with cells; 0 for none. */
  unitNumber(unit: Unit | undefined): number {
    if (unit === undefined) return 0;
    const at = this.typedUnits.findIndex((known) => known.symbol === unit.symbol);
    if (at >= 0) return at + 1;
    this.typedUnits.push(unit);
    return this.typedUnits.length;
  }
}
