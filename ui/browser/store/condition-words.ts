// What a filter or a colour asks of a cell, in words: 'is Lamplight or Copper Kettle', 'at least 5 lb'. The view bar and the
// dialogs say it, and pages for paper.

import {
  type Book,
  type ColumnView,
  type Condition,
  civilDayOfIso,
  decimalText,
  type Filter,
  fromCanonical,
  rowName,
  rowWithId,
  settings,
  showDate,
} from '../../../engine/index.ts';
import { withUnit } from './shown.ts';

/** More values than this are counted rather than named. */
const NAMED = 3;

/** What a filter lets through: 'Bed is Barn 1 or Barn 2', 'Rows that need attention'; nothing where the column that it looks at is gone. */
export function filterWords(book: Book, filter: Filter, column: ColumnView | undefined): string {
  if (filter.by === 'finding')
    return filter.level === 'any' ? 'Rows that need attention' : `Rows with ${filter.level}s`;
  return column === undefined ? '' : `${column.name} ${conditionWords(book, column, filter.when)}`;
}

export function conditionWords(book: Book, column: ColumnView, condition: Condition): string {
  const amount = (canonical: number): string => amountText(book, column, canonical);
  switch (condition.is) {
    case 'one of':
    case 'none of': {
      const { values } = condition;
      const not = condition.is === 'none of' ? 'is not ' : 'is ';
      if (values.length > NAMED) return `${not}one of ${values.length}`;
      return `${not}${values.map((key) => valueName(book, column, key)).join(' or ')}`;
    }
    case 'at least':
      return `at least ${amount(condition.least)}`;
    case 'at most':
      return `at most ${amount(condition.most)}`;
    case 'between':
      return `${amount(condition.least)} to ${amount(condition.most)}`;
    case 'holding':
      return `holds “${condition.text}”`;
    case 'not holding':
      return `doesn’t hold “${condition.text}”`;
    case 'blank':
      return 'is empty';
    case 'filled':
      return 'is filled';
    case 'typed over':
      return 'was typed over';
  }
}

function valueName(book: Book, column: ColumnView, key: string): string {
  const { type } = column;
  if (key === '') return 'nothing';
  if (type?.kind === 'link') {
    const slot = rowWithId(book, type.table, key);
    return slot === undefined ? 'a row that went' : rowName(book, type.table, slot);
  }
  const civil = type?.kind === 'date' ? civilDayOfIso(key) : undefined;
  if (civil !== undefined) return amountText(book, column, civil);
  if (type?.kind === 'yesno') return key === 'true' ? 'yes' : 'no';
  return type?.kind === 'number' || type?.kind === 'temperature' ? amountText(book, column, Number(key)) : key;
}

/** An amount is said to so many figures. */
const FIGURES = 6;

function amountText(book: Book, { type, unit }: ColumnView, canonical: number): string {
  const { writing } = settings(book);
  if (type?.kind === 'date') return showDate(canonical, writing);
  if (type?.kind !== 'number' && type?.kind !== 'temperature') return String(canonical);
  const number = Number(fromCanonical(type.unit, canonical).toPrecision(FIGURES));
  const decimals = number === 0 ? 0 : FIGURES - 1 - Math.floor(Math.log10(Math.abs(number)));
  return withUnit(decimalText(number, 0, Math.max(0, decimals), writing), unit);
}
