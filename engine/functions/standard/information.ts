// What a value is: blank, an error, a number, text; and turning values into numbers. Read by standard/index.ts.

import { severalFigures } from '../../language/records.ts';
import type { ArgumentType } from '../../language/signature.ts';
import { isError, type Scalar } from '../../values/error.ts';
import { tolerantFloor } from '../../values/tolerance.ts';
import { isText, type ValueType } from '../../values/type.ts';
import { anything, date, every, failure, makers, needed, plain, rule, takes, text, yesno } from '../build.ts';
import type { FunctionDefinition } from '../definition.ts';
import { readDate, readNumber, readTime } from './reading.ts';
import { HOURS, PLAIN } from './types.ts';

const make = makers('information');

const VALUE_ALONE = takes(needed('value', anything));

/** Asks of the value as it stands, blank or error. */
function asks(
  name: string,
  doc: string,
  section: string,
  answer: (value: Scalar) => boolean,
  isBlankness?: true,
): FunctionDefinition {
  return make.other(name, doc, section, VALUE_ALONE, yesno, {
    lane: 'scalar',
    blanks: 'given',
    errors: 'given',
    compute: ([value = null]) => answer(value),
    ...(isBlankness && { isBlankness }),
  });
}

/** Asks of a value's type; blanks and errors are none. */
function asksType(
  name: string,
  doc: string,
  section: string,
  answer: (type: ValueType) => boolean,
  ofNothing = false,
): FunctionDefinition {
  return make.other(name, doc, section, VALUE_ALONE, yesno, {
    lane: 'by type',
    choose: ([arg]) => {
      const holds = arg?.type === undefined ? ofNothing : answer(arg.type);
      return {
        lane: 'scalar',
        blanks: 'given',
        errors: 'given',
        compute: ([value = null]) => (value === null || isError(value) ? ofNothing : holds),
      };
    },
  });
}

function isNumber(type: ValueType): boolean {
  return type.kind === 'number' || type.kind === 'temperature' || type.kind === 'date';
}

/** What N makes of a type: numbers stay, yes and no become 1 and 0, text becomes 0. */
function numberType([arg]: readonly ArgumentType[]): ValueType | string {
  const type = arg?.type ?? PLAIN;
  switch (type.kind) {
    case 'number':
      return type;
    case 'yesno':
    case 'text':
    case 'choice':
      return PLAIN;
    case 'date':
      return 'A date is no number here: subtract another date for the time between, or take YEAR, MONTH or DAY.';
    case 'temperature':
      return 'A temperature has no nought of its own: subtract another, as in [Low] - 0 degC.';
    case 'record':
      return severalFigures('This', type.record);
    case 'link':
      return 'A link is no number: name the column of its row that you want, as in [Variety].[Days to maturity].';
  }
}

function numberFrom(value: Scalar): Scalar {
  if (typeof value === 'number') return value;
  return value === true ? 1 : 0;
}

/** Whether a whole part is even; only of plain numbers. */
function evenPart(x: number): boolean {
  return tolerantFloor(Math.abs(x)) % 2 === 0;
}

const NO_NUMBER = failure('value', 'This text is not a number: write it as 12.5, 1,250, 7 1/4, 85% or 1E5.');
const NO_DATE = failure('value', 'This text is not a date: write it as 2027-03-15, 15 Mar 2027 or Mar 15, 2027.');
const NO_TIME = failure('value', 'This text is not a time of day: write it as 6:30 or 18:05:20.');

export const INFORMATION: readonly FunctionDefinition[] = [
  asks(
    'ISBLANK',
    'Whether nothing is known: the one question that a blank answers.',
    '6.13.14',
    (value) => value === null,
    true,
  ),
  asks('ISERROR', 'Whether the value is an error of any kind.', '6.13.16', isError),
  asks(
    'ISERR',
    'Whether the value is an error other than nothing found.',
    '6.13.15',
    (value) => isError(value) && value.error !== 'missing',
  ),
  asks('ISNA', 'Whether a look-up found nothing.', '6.13.20', (value) => isError(value) && value.error === 'missing'),
  asksType('ISNUMBER', 'Whether the value is a number, a date or a temperature; a blank is none.', '6.13.22', isNumber),
  asksType('ISTEXT', 'Whether the value is text; a blank is none.', '6.13.25', isText),
  asksType(
    'ISNONTEXT',
    'Whether the value is anything but text; a blank is.',
    '6.13.21',
    (type) => !isText(type),
    true,
  ),
  asksType('ISLOGICAL', 'Whether the value is yes or no.', '6.13.19', (type) => type.kind === 'yesno'),
  make.numeric(
    'ISEVEN',
    'Whether the whole part of a number is even.',
    '6.13.17',
    takes(needed('number', plain)),
    yesno,
    (x) => (evenPart(x) ? 1 : 0),
  ),
  make.numeric(
    'ISODD',
    'Whether the whole part of a number is odd.',
    '6.13.23',
    takes(needed('number', plain)),
    yesno,
    (x) => (evenPart(x) ? 0 : 1),
  ),
  make.other(
    'N',
    'A number as it is, yes as 1, no as 0, text and blank as 0.',
    '6.13.26',
    VALUE_ALONE,
    rule(numberType),
    {
      lane: 'scalar',
      blanks: 'given',
      compute: ([value = null]) => numberFrom(value),
    },
  ),
  make.scalar('NA', 'Nothing found: the error that IFNA and ISNA look for.', '6.13.27', takes(), every('T'), () =>
    failure('missing', 'Marked as not available by NA().'),
  ),
  make.scalar(
    'VALUE',
    'The plain number that a text spells: 12.5, 1,250, 7 1/4, 85%, 1E5.',
    '6.13.34',
    takes(needed('text', text)),
    plain,
    ([given]) => (typeof given === 'string' ? (readNumber(given) ?? NO_NUMBER) : null),
  ),
  make.scalar(
    'DATEVALUE',
    'The date that a text spells: 2027-03-15, 15 Mar 2027, Mar 15, 2027.',
    '6.10.4',
    takes(needed('text', text)),
    date,
    ([given]) => (typeof given === 'string' ? (readDate(given) ?? NO_DATE) : null),
  ),
  make.scalar(
    'TIMEVALUE',
    'The time of day that a text spells, as a time span from midnight: 6:30, 18:05:20.',
    '6.10.19',
    takes(needed('text', text)),
    rule(() => HOURS),
    ([given]) => (typeof given === 'string' ? (readTime(given) ?? NO_TIME) : null),
  ),
];
