// What a filter or a colour asks of a cell, in words: 'is Lamplight or Copper Kettle', 'at least 5 lb'. The view bar and the
// dialogs say it.

import {
  type Book,
  type ColumnView,
  type Condition,
  civilDayOfIso,
  fromCanonical,
  rowName,
  rowWithId,
} from '../../../engine/index.ts';

/** More values than this are counted rather than named. */
const NAMED = 3;

export function conditionWords(
  book: Book,
  column: ColumnView,
  condition: Condition,
  dateWords: (civil: number) => string,
): string {
  const amount = (canonical: number): string => amountText(column, canonical, dateWords);
  switch (condition.is) {
    case 'one of':
    case 'none of': {
      const { values } = condition;
      const not = condition.is === 'none of' ? 'is not ' : 'is ';
      if (values.length > NAMED) return `${not}one of ${values.length}`;
      return `${not}${values.map((key) => valueName(book, column, key, dateWords)).join(' or ')}`;
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

function valueName(book: Book, { type, unit }: ColumnView, key: string, dateWords: (civil: number) => string): string {
  if (key === '') return 'nothing';
  if (type?.kind === 'link') {
    const slot = rowWithId(book, type.table, key);
    return slot === undefined ? 'a row that went' : rowName(book, type.table, slot);
  }
  const civil = type?.kind === 'date' ? civilDayOfIso(key) : undefined;
  if (civil !== undefined) return dateWords(civil);
  if (type?.kind === 'yesno') return key === 'true' ? 'yes' : 'no';
  if (type?.kind !== 'number' && type?.kind !== 'temperature') return key;
  return withUnit(fromCanonical(type.unit, Number(key)), unit);
}

function amountText({ type, unit }: ColumnView, canonical: number, dateWords: (civil: number) => string): string {
  if (type?.kind === 'date') return dateWords(canonical);
  if (type?.kind !== 'number' && type?.kind !== 'temperature') return String(canonical);
  return withUnit(fromCanonical(type.unit, canonical), unit);
}

function withUnit(number: number, unit: string): string {
  const figure = String(Number(number.toPrecision(6)));
  return unit === '' ? figure : `${figure} ${unit}`;
}
