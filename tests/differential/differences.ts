// Where the engines give different results on purpose: which functions, when, why, and which side the standard (OASIS ODF 1.3 part
// 4) or plain arithmetic supports. Every difference that the comparison finds must be one of these.

import { asksOf } from './asks.ts';
import { type Difference, errorKind, isFailure } from './compare.ts';
import {
  gap,
  isDusty,
  isFraction,
  type KnownDifference,
  kinds,
  num,
  numbersOf,
  peerFails,
  textsOf,
} from './difference-parts.ts';
import { DIFFERENCES_OF_CHANCES } from './differences-of-chances.ts';
import { rootOf } from './expression.ts';

const CONDITIONAL = 'SUMIF SUMIFS COUNTIF COUNTIFS AVERAGEIF MINIFS MAXIFS';

/** 2 ^ 53: beyond, not every whole number is a double. */
const EXACT = Number.MAX_SAFE_INTEGER;

export const DIFFERENCES: readonly KnownDifference[] = [
  ...DIFFERENCES_OF_CHANCES,
  {
    on: 'every function and operator',
    why: 'An argument that differs below the tolerance is blown up by a subtraction, a rounding step or a comparison.',
    supports: 'either',
    applies: ({ carried }) => carried,
  },
  {
    on: 'every function and operator',
    why: 'Beyond 1e100 a step on the way overflows in one and not in the other.',
    supports: 'either',
    applies: (one) => numbersOf(one).some((x) => Math.abs(x) > 1e100),
  },
  {
    on: '= <> < <= > >= MATCH XLOOKUP SWITCH',
    why: 'Texts are ordered by the Unicode table, capitals alike, and Ä is not A; the peer sorts as a dictionary does (6.4.9 leaves order to the evaluator).',
    supports: 'either',
    applies: (one) => textsOf(one).some((text) => /[^a-z0-9]/i.test(text)),
  },
  {
    on: '= <> < <= > >=',
    why: 'Numbers within 1e-14 of their size are equal: 0.1 + 0.2 = 0.3. The peer, not rounding, compares all bits.',
    supports: 'arithmetic',
    applies: (one) =>
      Math.abs(num(one, 0) - num(one, 1)) <= 1e-14 * Math.max(Math.abs(num(one, 0)), Math.abs(num(one, 1))),
  },
  {
    on: '= <> < <= > >=',
    why: 'Of sums and differences dust is forgiven at the size of their terms: 1 - 0.9 - 0.1 = 0. The peer looks at what is left.',
    supports: 'arithmetic',
    applies: ({ formula }) =>
      formula.is === 'binary' && formula.args.some((side) => /^[+-]$|^minus$/.test(rootOf(side))),
  },
  {
    on: 'ACOT',
    why: 'The arc cotangent lies between 0 and pi (6.16.5); the peer gives negative angles for negative numbers.',
    supports: 'standard',
    applies: (one) => num(one, 0) < 0 && Math.abs(gap(one) - Math.PI) < 1e-9,
  },
  {
    on: 'AVERAGE MEDIAN AVERAGEIF DAVERAGE PERCENTILE PERCENTILE.INC PERCENTILE.EXC QUARTILE QUARTILE.INC QUARTILE.EXC',
    why: 'A date is a whole day: the mean or quantile of dates is the nearest one.',
    supports: 'either',
    applies: (one) => one.formula.kind === 'date' && gap(one) <= 0.5,
  },
  {
    on: 'CEILING.MATH FLOOR.MATH',
    why: 'Any mode but 0 turns negative numbers the other way; the peer knows 1 alone.',
    supports: 'either',
    applies: (one) => num(one, 0) < 0 && num(one, 2) !== 0 && num(one, 2) !== 1,
  },
  {
    on: 'LCM',
    why: 'The peer stops where not every whole number is a double.',
    supports: 'either',
    applies: (one) => typeof one.own === 'number' && one.own > EXACT,
  },
  {
    on: 'DATE',
    why: 'A month or day that leads out of all years is an error of the number here, of the value there.',
    supports: 'either',
    applies: kinds('number', 'value'),
  },
  {
    on: 'CLEAN',
    why: 'Letters 127 to 159 of Unicode can not be printed either; the peer leaves them.',
    supports: 'arithmetic',
    applies: (one) => one.own === '' || textsOf(one).some((text) => /[\u007f-\u009f]/.test(text)),
  },
  {
    on: 'ROUND ROUNDUP ROUNDDOWN TRUNC',
    why: 'A number has no more digits than it has: rounded to hundreds of them it stays; the peer overflows.',
    supports: 'arithmetic',
    applies: (one) => num(one, 1) > 300 && peerFails('number')(one),
  },
  {
    on: 'AND OR',
    why: 'The first no (yes) from the left decides, whatever comes after it; the peer lets a later error win.',
    supports: 'either',
    applies: ({ root, own, peer, args }) =>
      own === (root === 'OR') && errorKind(peer) !== undefined && args.includes(root === 'OR'),
  },
  {
    on: 'CEILING FLOOR',
    why: 'The step may be left out and is 1 (6.17.1, 6.17.3); the peer wants it.',
    supports: 'standard',
    applies: (one) => one.args.length === 1 && peerFails('missing')(one),
  },
  {
    on: 'CEILING FLOOR MROUND',
    why: 'The sign of the step does not matter here; the peer refuses a step of the other sign.',
    supports: 'either',
    applies: (one) => num(one, 0) * num(one, 1) < 0 && peerFails('number')(one),
  },
  {
    on: 'CEILING FLOOR',
    why: 'Up is towards more and down towards less, of negative numbers too, unless a mode is given (6.17.1, 6.17.3); the peer turns round where both are negative.',
    supports: 'standard',
    applies: (one) => num(one, 0) < 0 && num(one, 1) < 0,
  },
  {
    on: 'CHOOSE',
    why: 'A place is cut off to a whole number (6.14.3); the peer refuses a fraction.',
    supports: 'standard',
    applies: (one) => isFraction(num(one, 0)) && peerFails('number')(one),
  },
  {
    on: 'CHOOSE',
    why: 'A place outside the list is an error of the value here, of the number there.',
    supports: 'either',
    applies: kinds('value', 'number'),
  },
  {
    on: 'BINOM.DIST BINOMDIST BINOM.INV CRITBINOM CONFIDENCE CONFIDENCE.NORM YEARFRAC DB DDB FACT COMBIN SUBSTITUTE SEARCH FIND REPT LEFT MID REPLACE',
    why: 'A count, a place or a basis is cut off to a whole number, dust forgiven, and a life may have a fraction; the peer refuses these or reckons with them.',
    supports: 'standard',
    applies: (one) => numbersOf(one).some(isFraction) && errorKind(one.own) === undefined,
  },
  {
    on: 'COMBIN',
    why: 'The peer stops at 1,030 to choose from.',
    supports: 'arithmetic',
    applies: (one) => num(one, 0) >= 1030 && peerFails('number')(one),
  },
  {
    on: `${CONDITIONAL} MATCH`,
    why: 'Conditions compare the whole text, without wildcards; the peer reads * and ? as any letters.',
    supports: 'either',
    applies: (one) => textsOf(one).some((text) => /[*?~]/.test(text)),
  },
  {
    on: 'DATE',
    why: 'A year below 1900 is that year; the peer adds 1900 to it, or ends there (6.10.2 leaves years of two digits to the evaluator).',
    supports: 'either',
    applies: (one) => num(one, 0) < 1900,
  },
  {
    on: 'DATEDIF',
    why: 'Days, months and years exist between any two dates in order, none between a date and itself; the peer refuses some.',
    supports: 'arithmetic',
    applies: (one) => typeof one.own === 'number' && num(one, 0) <= num(one, 1) && peerFails('number')(one),
  },
  {
    on: 'DATEDIF',
    why: 'An unknown interval is an error of the value here, of the number there.',
    supports: 'either',
    applies: kinds('value', 'number'),
  },
  {
    on: 'DAYS YEARFRAC DATEDIF DAYS360 NETWORKDAYS WORKDAY EDATE EOMONTH',
    why: 'A date moved by part of a day keeps the part here; the peer cuts it off.',
    supports: 'either',
    applies: (one) => numbersOf(one).slice(0, 2).some(isFraction) && gap(one) <= 2,
  },
  {
    on: 'EDATE EOMONTH',
    why: 'A fraction of a month is cut off (6.10.9, 6.10.10); the peer refuses it.',
    supports: 'standard',
    applies: (one) => isFraction(num(one, 1)) && peerFails('number')(one),
  },
  {
    on: 'EDATE',
    why: 'The last of February in a leap year is the 29th; the peer stops at the 28th.',
    supports: 'arithmetic',
    applies: (one) => gap(one) === 1 && asksOf.isLeapDay(one.own),
  },
  {
    on: 'FIND SEARCH',
    why: 'A text that does not occur is nothing found here, an error of the value there.',
    supports: 'either',
    applies: kinds('missing', 'value'),
  },
  {
    on: 'SEARCH',
    why: 'Any letters may be none, at the end of the text too; the peer looks at no place behind the last letter.',
    supports: 'either',
    applies: (one) => /^\*+$/.test(textsOf(one)[0] ?? '') && peerFails('value')(one),
  },
  {
    on: 'FIND',
    why: 'The place counts from the beginning of the text (6.20.9); the peer counts from the start of the search.',
    supports: 'standard',
    applies: (one) => num(one, 2) > 1 && typeof one.peer === 'number',
  },
  {
    on: 'HOUR MINUTE SECOND',
    why: 'Times go by whole seconds; in spans of many years the peer keeps parts of one, and in the longest a double has none.',
    supports: 'either',
    applies: (one) => (gap(one) < 1 && num(one, 0) > 10_000) || num(one, 0) > 1e9,
  },
  {
    on: 'VALUE',
    why: 'A text that spells too large a number is an error of the value here, of the number there.',
    supports: 'either',
    applies: kinds('value', 'number'),
  },
  {
    on: 'HOUR MINUTE SECOND',
    why: 'Of a negative time span the time of day before midnight; the peer refuses it.',
    supports: 'either',
    applies: (one) => num(one, 0) < 0 && peerFails('number')(one),
  },
  {
    on: 'IF',
    why: 'Without otherwise the result is blank; the peer gives no (6.15.4).',
    supports: 'either',
    applies: ({ own, peer, args }) => own === null && peer === false && args.length === 2,
  },
  {
    on: 'IFS',
    why: 'Where no condition holds the result is blank, as in IF; the peer gives nothing found.',
    supports: 'either',
    applies: ({ own, peer }) => own === null && errorKind(peer) === 'missing',
  },
  {
    on: 'IFS',
    why: 'Conditions after the first that holds are not looked at; the peer lets an error in them win.',
    supports: 'either',
    applies: ({ own, peer, args }) =>
      errorKind(own) === undefined && args.includes(true) && errorKind(peer) !== undefined,
  },
  {
    on: 'INDEX',
    why: 'A row is cut off to a whole number (6.14.6); the peer takes the wrong cell for a fraction.',
    supports: 'standard',
    applies: (one) => isFraction(num(one, 1)) && num(one, 1) >= 1,
  },
  {
    on: 'INDEX',
    why: 'A row outside the column is an error of the reference here, of the number or the value there.',
    supports: 'either',
    applies: kinds('reference', 'number', 'value'),
  },
  {
    on: 'INT',
    why: 'INT goes down to the whole number at or below (6.17.2); the peer cuts towards nought.',
    supports: 'standard',
    applies: (one) => num(one, 0) < 0 && gap(one) === 1,
  },
  {
    on: 'ISOWEEKNUM WEEKNUM',
    why: 'The week that holds the first Thursday is week 1 (ISO 8601), though it begin in December; the peer calls some week 53.',
    supports: 'standard',
    applies: ({ own, peer }) => own === 1 && peer === 53,
  },
  {
    on: 'ISEVEN ISODD',
    why: 'The whole part of a number is asked (6.13.17, 6.13.23); the peer takes fractions and negative numbers for neither.',
    supports: 'standard',
    applies: (one) => (isFraction(num(one, 0)) || num(one, 0) < 0) && one.own === true && one.peer === false,
  },
  {
    on: 'MAXIFS MINIFS DMAX DMIN',
    why: 'Of no rows there is no largest or smallest: blank here, 0 there.',
    supports: 'either',
    applies: ({ own, peer }) => own === null && peer === 0,
  },
  {
    on: 'DAYS360',
    why: 'From the last of February the US way counts 30 days (6.10.7); the peer counts the days it has.',
    supports: 'standard',
    applies: (one) => gap(one) <= 3 && numbersOf(one).some(asksOf.isEndOfFebruary),
  },
  {
    on: 'YEARFRAC',
    why: 'In years of twelve months of 30 days the same: from the last of February the US way counts 30 days (6.10.7); the peer leaves the 31st of the other end.',
    supports: 'standard',
    applies: (one) => gap(one) * 360 <= 3 && numbersOf(one).some(asksOf.isEndOfFebruary),
  },
  {
    on: 'DGET',
    why: 'No row that meets the criteria is nothing found here, an error of the value there.',
    supports: 'either',
    applies: kinds('missing', 'value'),
  },
  {
    on: 'DAYS WEEKNUM ISOWEEKNUM WEEKDAY YEAR MONTH DAY DATE EDATE EOMONTH NETWORKDAYS WORKDAY DAYS360 DATEDIF YEARFRAC',
    why: 'Dates run from the year 1; those of the peer begin with 1900.',
    supports: 'either',
    applies: ({ own, args, formula, peer }) =>
      errorKind(own) === undefined &&
      errorKind(peer) !== undefined &&
      (args.slice(0, 2).some((arg) => typeof arg === 'number' && arg < 1) ||
        (formula.kind === 'date' && Number(own) < 1)),
  },
  {
    on: 'RIGHT',
    why: 'A number of letters is cut off to a whole number (6.20.19); the peer gives the whole text for less than one.',
    supports: 'standard',
    applies: (one) => num(one, 1) < 1 && one.own === '',
  },
  {
    on: 'ROUND ROUNDUP ROUNDDOWN TRUNC',
    why: 'A number of digits is cut off to a whole number (6.17.5); the peer rounds to a fraction of a digit.',
    supports: 'standard',
    applies: (one) => isFraction(num(one, 1)),
  },
  {
    on: 'ROUND ROUNDUP ROUNDDOWN TRUNC CEILING FLOOR MROUND INT QUOTIENT MOD EVEN ODD',
    why: 'Binary dust, 1e-14 of the size, is forgiven before a step is taken: ROUNDUP(100 * (1 + 10%)) is 110.',
    supports: 'arithmetic',
    applies: isStepOfDust,
  },
  {
    on: 'STDEV STDEV.S STDEVP STDEV.P VAR VAR.S VARP VAR.P DEVSQ SKEW',
    why: 'Squares of numbers beyond 1e150 overflow: an error here, another kind or a scaled sum there.',
    supports: 'either',
    applies: (one) => errorKind(one.own) !== undefined && numbersOf(one).some((x) => Math.abs(x) > 1e150),
  },
  {
    on: 'STEYX STDEV STDEV.S STDEVP STDEV.P VAR VAR.S VARP VAR.P AVEDEV DEVSQ SUMXMY2 SLOPE COVAR CORREL PEARSON RSQ SKEW',
    why: 'Where the exact figure is 0, rounding alone is left, and the two round in another order.',
    supports: 'either',
    applies: (one) => gap(one) <= 1e-9 * scaleOf(one),
  },
  {
    on: 'SUBSTITUTE',
    why: 'An empty text occurs nowhere, so nothing is replaced (6.20.21); the peer puts the new text between all letters.',
    supports: 'standard',
    applies: ({ args: [text, old], own }) => old === '' && own === text,
  },
  {
    on: 'TEXT',
    why: 'A half is a half though binary dust hide it: 1115.965 is written 1115.97, as ROUND has it.',
    supports: 'arithmetic',
    applies: ({ args: [x, format] }) =>
      typeof x === 'number' && typeof format === 'string' && isDusty(x * 10 ** (format.split('.')[1] ?? '').length),
  },
  {
    on: 'TEXT',
    why: 'The peer has no names of months, no per cent, no thousands and no scientific form, and leaves a bare decimal mark.',
    supports: 'standard',
    applies: ({ args }) => typeof args[1] === 'string' && /mmm|E\+|#\.##|%|,/.test(args[1]),
  },
  {
    on: 'TIME',
    why: 'TIME is a span: hours beyond a day, below nought and in parts count as they are; the peer turns them into a time of day.',
    supports: 'either',
    applies: (one) =>
      numbersOf(one).some((part) => isFraction(part) || part < 0) ||
      num(one, 0) >= 24 ||
      num(one, 1) >= 60 ||
      num(one, 2) >= 60,
  },
  {
    on: 'VALUE TIMEVALUE DATEVALUE',
    why: 'VALUE reads numbers, DATEVALUE dates, TIMEVALUE times; the peer reads any of them in each.',
    supports: 'either',
    applies: ({ own, args: [text] }) =>
      errorKind(own) === 'value' && typeof text === 'string' && (text.includes(':') || asksOf.isDateOrTime(text)),
  },
  {
    on: 'percent',
    why: 'The peer cannot read a per cent sign after a per cent sign.',
    supports: 'standard',
    applies: ({ formula, peer }) =>
      formula.is === 'percent' && formula.args[0].is === 'percent' && errorKind(peer) === 'ERROR',
  },
  {
    on: 'REPT',
    why: 'A text has at most 32,767 letters here.',
    supports: 'either',
    applies: ({ own, peer }) => errorKind(own) === 'value' && typeof peer === 'string' && peer.length > 32_767,
  },
  {
    on: 'every function and operator',
    why: 'The first error among the arguments passes on here; the peer may look at another argument first.',
    supports: 'either',
    applies: ({ own, args }) => {
      const kind = errorKind(own);
      return kind !== undefined && args.some((arg) => isFailure(arg) && errorKind(arg) === kind);
    },
  },
];

/** The largest figure among the arguments, or 1, squared where the result is. */
function scaleOf({ args, root }: Difference): number {
  const figures = args.flat().filter((arg): arg is number => typeof arg === 'number');
  const largest = Math.max(1, ...figures.map(Math.abs));
  return /VAR|DEVSQ|SUMX/.test(root) ? largest ** 2 : largest;
}

/** One step apart, at a place where the exact figure lies on a step but for dust. */
function isStepOfDust(one: Difference): boolean {
  const x = num(one, 0);
  const second = one.args.length > 1 ? num(one, 1) : 0;
  const digits = /^ROUND|^TRUNC/.test(one.root);
  if (one.root === 'MOD') return isDusty(x / second);
  const scaled = digits ? x * 10 ** Math.trunc(second) : x / (one.args.length > 1 ? second : 1);
  return isDusty(scaled) || Math.abs(scaled) > EXACT / 100;
}

/** Whether this function or operator is one that the entry is about. */
export function isAbout({ on }: KnownDifference, root: string): boolean {
  return on === 'every function and operator' || on.split(' ').includes(root);
}
