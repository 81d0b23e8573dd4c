// Twelve months of lows and highs as people paste them: tables either way up, from any month on, with any minus, in either scale.

import { describe, expect, test } from 'vitest';
import { readMonths } from '../../../ui/browser/first-visit/months.ts';
import { MONTH_NAMES } from './month-names.ts';

/** The months as read; the reason where they are not. */
function monthsOf(typed: string): unknown {
  const read = readMonths(typed);
  return read.ok ? read.months : read.why;
}

function whyNot(typed: string): string {
  const read = readMonths(typed);
  return read.ok ? 'It was read.' : read.why;
}

describe('twelve months', () => {
  const tall = Array.from({ length: 12 }, (_, month) => `Month ${month + 1}\t${month - 8}\t${month + 3.5}`).join('\n');

  test('a line each, whatever stands in front', () => {
    const read = readMonths(tall);
    expect(read.ok && read.months.length).toBe(12);
    expect(read.ok && read.months[0]).toEqual({ low: -8, high: 3.5 });
  });

  test('a line of lows and a line of highs, either first, with decimal commas and long minus signs', () => {
    const lows = Array.from({ length: 12 }, (_, month) => `\u2212${month},5`).join(' ');
    const highs = Array.from({ length: 12 }, (_, month) => `${month + 10}`).join(' ');
    const read = readMonths(`highs ${highs}\nlows ${lows}`);
    expect(read.ok && read.months[2]).toEqual({ low: -2.5, high: 12 });
  });

  const lows = [30, 33, 40, 49, 58, 66, 70, 69, 62, 50, 40, 33];
  const highs = [48, 52, 61, 70, 78, 85, 89, 88, 82, 72, 61, 51];
  const wanted = lows.map((low, month) => ({ low, high: highs[month] }));
  const lines = (line: (low: number, high: number, month: number) => string): string =>
    lows.map((low, month) => line(low, highs[month] ?? 0, month + 1)).join('\n');

  test.each([
    ['a number of the month in front', lines((low, high, month) => `${month},${low},${high}`)],
    [
      'a year and a month in front',
      lines((low, high, month) => `2026-${String(month).padStart(2, '0')}\t${low}\t${high}`),
    ],
    ['commas between', lines((low, high) => `${low},${high}`)],
    ['commas between figures with points', lines((low, high) => `${low}.0,${high}`)],
    ['a hyphen between', lines((low, high) => `${low}-${high}`)],
    ['a dash between', lines((low, high) => `${low} \u2013 ${high}`)],
    ['their unit behind each', lines((low, high) => `${low}°F-${high}°F`)],
    ['the high first', lines((low, high) => `${high};${low}`)],
    [
      'a mean between, under heads',
      `Month\tLow\tMean\tHigh\n${lines((low, high, month) => `${month}\t${low}\t${(low + high) / 2}\t${high}`)}`,
    ],
    ['rain behind, under heads', `Min Max Rain\n${lines((low, high) => `${low} ${high} 3.4`)}`],
    [
      'records beside, under heads',
      `Record low,Mean min,Mean max\n${lines((low, high) => `${low - 20},${low},${high}`)}`,
    ],
    ['a line for the year behind', `${lines((low, high) => `${low} ${high}`)}\nYear 50 70`],
    ['lines of twelve and the year', `low ${lows.join(' ')} 50\nhigh ${highs.join(' ')} 70`],
    ['lines of twelve with means', `high,${highs.join(',')}\nmean,${lows.join(',')}\nlow,${lows.join(',')}`],
  ])('with %s', (_, typed) => {
    expect(monthsOf(typed)).toEqual(wanted);
  });

  test('below zero after a blank is below zero', () => {
    expect(monthsOf(lines((low, high) => `-${high} -${low}`))).toEqual(
      lows.map((low, month) => ({ low: -(highs[month] ?? 0), high: -low })),
    );
  });

  test.each([
    ['a third figure without heads', lines((low, high) => `${low} ${high} 3.4`), 'Each line holds 3 figures'],
    [
      'lines of different length',
      lines((low, high, month) => (month === 4 ? `${low} ${high} 2` : `${low} ${high}`)),
      'more figures than others',
    ],
    [
      'three lines of twelve without words',
      [lows, highs, lows].map((line) => line.join(' ')).join('\n'),
      '3 lines hold twelve months each',
    ],
  ])('%s is asked about', (_, typed, why) => {
    const read = readMonths(typed);
    expect(!read.ok && read.why).toContain(why);
  });

  test('eleven lines are refused with what is wanted', () => {
    const read = readMonths(tall.split('\n').slice(1).join('\n'));
    expect(!read.ok && read.why).toContain('11 lines could be read');
  });
});

/** A place with frost, in the order of the calendar. */
const COLD: readonly (readonly [number, number])[] = [
  [-8, -1],
  [-7, 2],
  [-3, 8],
  [2, 14],
  [8, 20],
  [13, 25],
  [16, 28],
  [15, 27],
  [10, 22],
  [4, 15],
  [-1, 7],
  [-6, 1],
];
const cold = COLD.map(([low, high]) => ({ low, high }));
/** From July to June, as years are told in the south. */
const FROM_JULY = [6, 7, 8, 9, 10, 11, 0, 1, 2, 3, 4, 5];

describe('a minus in all its signs', () => {
  const inSign = (sign: string, figure: number): string => (figure < 0 ? `${sign}${-figure}` : `${figure}`);
  const tall = (sign: string, between: string): string =>
    COLD.map(([low, high], at) => `${MONTH_NAMES[at]}\t${inSign(sign, low)}${between}${inSign(sign, high)}`).join('\n');

  test.each([
    ['a hyphen', '-'],
    ['a true minus', '\u2212'],
    ['an en dash', '\u2013'],
    ['an em dash', '\u2014'],
    ['a figure dash', '\u2012'],
    ['a hyphen that does not break', '\u2011'],
    ['a small hyphen', '\ufe63'],
    ['a wide hyphen', '\uff0d'],
    ['a word', 'minus '],
    ['a hyphen and a blank', '- '],
    ['an en dash and a blank', '\u2013 '],
  ])('%s', (_, sign) => {
    for (const between of ['\t', ' to ', ', ', '; ', ' / ']) expect(monthsOf(tall(sign, between))).toEqual(cold);
    const across = (label: string, at: 0 | 1): string =>
      [label, ...COLD.map((pair) => inSign(sign, pair[at]))].join('\t');
    expect(monthsOf(`${across('low', 0)}\n${across('high', 1)}`)).toEqual(cold);
    expect(monthsOf(`${across('high', 1)}\n${across('low', 0)}`)).toEqual(cold);
  });

  test('with a blank on either side of a dash, in lines of twelve with blanks between', () => {
    const across = (at: 0 | 1): string => COLD.map((pair) => inSign('- ', pair[at])).join(' ');
    expect(monthsOf(`low ${across(0)}\nhigh ${across(1)}`)).toEqual(cold);
  });

  test('a dash behind every name, or a bullet before every line, is none', () => {
    const warm = COLD.map(([low, high]) => ({ low: low + 20, high: high + 20 }));
    const lines = (front: (name: string) => string): string =>
      warm.map(({ low, high }, at) => `${front(MONTH_NAMES[at] ?? '')}${low} ${high}`).join('\n');
    expect(monthsOf(lines((name) => `${name} - `))).toEqual(warm);
    expect(monthsOf(lines((name) => `${name} \u2013 `))).toEqual(warm);
    expect(monthsOf(lines(() => '- '))).toEqual(warm);
    const across = (at: 'low' | 'high'): string => `${at} - ${warm.map((month) => month[at]).join(' ')}`;
    expect(monthsOf(`${across('low')}\n${across('high')}`)).toEqual(warm);
  });

  test.each([
    ['a hyphen and degrees from and to', ' - ', ' to ', ' C'],
    ['a hyphen and a blank', ' - ', ' ', ''],
    ['a hyphen without blanks', '-', ' ', ''],
    ['dashes throughout', ' \u2013 ', ' \u2013 ', ''],
    ['a colon and a dash', ': \u2013 ', ' / ', '\u00b0C'],
  ])('a dash behind every name is none where some figures are below zero: %s', (_, front, between, unit) => {
    const lines = COLD.map(([low, high], at) => `${MONTH_NAMES[at]}${front}${low}${between}${high}${unit}`);
    expect(monthsOf(lines.join('\n'))).toEqual(cold);
    const across = (label: string, at: 0 | 1): string => `${label}${front}${COLD.map((pair) => pair[at]).join(' ')}`;
    expect(monthsOf(`${across('low', 0)}\n${across('high', 1)}`)).toEqual(cold);
  });
});

test('figures in brackets, as accounts write what is below zero, are asked about', () => {
  const inBrackets = (figure: number): string => (figure < 0 ? `(${-figure})` : `${figure}`);
  const lines = COLD.map(([low, high]) => `${inBrackets(low)}\t${inBrackets(high)}`);
  expect(whyNot(lines.join('\n'))).toContain('write a minus');
  expect(whyNot(COLD.map(([low, high]) => `${high + 2}\t${inBrackets(low)}`).join('\n'))).toContain('write a minus');
  expect(whyNot(lines.map((line, at) => `${MONTH_NAMES[at]} ${line}`).join('\n'))).toContain('write a minus');
  const across = ([0, 1] as const).map((at) => COLD.map((pair) => inBrackets(pair[at])).join(' '));
  expect(whyNot(`low ${across[0]}\nhigh ${across[1]}`)).toContain('write a minus');
  // Behind another figure they say something else, and in front of every line which month it is.
  expect(monthsOf(COLD.map(([low, high]) => `${high} (${low})`).join('\n'))).toEqual(cold);
  expect(monthsOf(COLD.map(([low, high], at) => `(${at + 1}) ${low} ${high}`).join('\n'))).toEqual(cold);
});

test.each([
  ['Arabic', 'ar-u-nu-arab'],
  ['Persian', 'fa-u-nu-arabext'],
  ['Devanagari', 'hi-u-nu-deva'],
  ['wide', 'ja-u-nu-fullwide'],
])('figures of another script are read: %s', (_, locale) => {
  // The runtime's own tables of locales write them, with that script's minus, marks and marks of direction.
  const { format } = new Intl.NumberFormat(locale, { minimumFractionDigits: 1 });
  const tenths = COLD.map(([low, high]) => [low + 0.5, high + 0.5] as const);
  const typed = tenths.map(([low, high]) => `${format(low)}\t${format(high)}`).join('\n');
  expect(monthsOf(typed)).toEqual(tenths.map(([low, high]) => ({ low, high })));
  const across = (label: string, at: 0 | 1): string => `${label} ${tenths.map((pair) => format(pair[at])).join(' ')}`;
  expect(monthsOf(`${across('low', 0)}\n${across('high', 1)}`)).toEqual(tenths.map(([low, high]) => ({ low, high })));
});

describe('the order of the months', () => {
  const line = (at: number, name: string): string => `${name} ${COLD[at]?.join(' ')}`;

  test.each([
    ['names', (at: number) => MONTH_NAMES[at] ?? ''],
    ['short names', (at: number) => MONTH_NAMES[at]?.slice(0, 3) ?? ''],
    ['numbers', (at: number) => `${at + 1}`],
    ['years and numbers', (at: number) => `${at >= 6 ? 2026 : 2027}/${at + 1}`],
  ])('is what %s say, in a table from July on', (_, name) => {
    expect(monthsOf(FROM_JULY.map((at) => line(at, name(at))).join('\n'))).toEqual(cold);
  });

  test('is what names say in whatever order, with a title above and the year below', () => {
    const shuffled = [3, 0, 11, 7, 1, 9, 2, 5, 10, 4, 6, 8].map((at) => line(at, MONTH_NAMES[at] ?? '')).join('\n');
    expect(monthsOf(`1991\u20132020\n${shuffled}\nYear 3 13`)).toEqual(cold);
  });

  test.each([
    ['names', FROM_JULY.map((at) => MONTH_NAMES[at]).join('\t')],
    ['initials', FROM_JULY.map((at) => MONTH_NAMES[at]?.charAt(0)).join(' ')],
    ['numbers', FROM_JULY.map((at) => at + 1).join(' ')],
    ['names with the year', `Month ${FROM_JULY.map((at) => MONTH_NAMES[at]?.slice(0, 3)).join(' ')} Year`],
  ])('is what %s in the head of wide lines say', (_, head) => {
    const across = (label: string, at: 0 | 1): string =>
      `${label} ${FROM_JULY.map((month) => COLD[month]?.[at]).join(' ')}`;
    expect(monthsOf(`${head}\n${across('low', 0)}\n${across('high', 1)}`)).toEqual(cold);
  });

  test('names are those of the workbook’s locale too', () => {
    const german = [
      'Januar',
      'Februar',
      'M\u00e4rz',
      'April',
      'Mai',
      'Juni',
      'Juli',
      'August',
      'September',
      'Oktober',
      'November',
      'Dezember',
    ];
    const typed = FROM_JULY.map((at) => line(at, german[at] ?? '')).join('\n');
    const read = readMonths(
      typed,
      german.map((name) => [name]),
    );
    expect(read.ok && read.months).toEqual(cold);
  });

  test('a month that is there twice, and names on some lines that begin elsewhere, are asked about', () => {
    const twice = MONTH_NAMES.map((name, at) => line(at, at === 6 ? 'June' : name)).join('\n');
    expect(whyNot(twice)).toContain('Which line is which month');
    expect(whyNot(FROM_JULY.map((at, row) => line(at, row < 6 ? (MONTH_NAMES[at] ?? '') : '')).join('\n'))).toContain(
      'Which line is which month',
    );
  });
});

describe('what lines and columns are called', () => {
  const across = (label: string, at: 0 | 1): string => `${label} ${COLD.map((pair) => pair[at]).join(' ')}`;

  test.each([
    ['a low and rain', 'Mean low', 'Rain mm'],
    ['a mean and a high', 'Mean', 'High'],
    ['lows and highs of single years', 'Record low', 'Record high'],
    ['two means', 'Mean', 'Average'],
  ])('%s are no low and high', (_, first, second) => {
    expect(whyNot(`${across(first, 0)}\n${across(second, 1)}`)).toContain(
      'which are the lows and the highs is not clear',
    );
    const down = `Month\t${first}\t${second}\n${COLD.map((pair, at) => `${MONTH_NAMES[at]}\t${pair.join('\t')}`).join('\n')}`;
    if (first !== 'Mean' || second !== 'Average') {
      expect(whyNot(down)).toContain('which are the low and the high is not clear');
    }
  });

  test('lines without names beside one that is something else are the lows and highs', () => {
    const rain = `Rain mm ${COLD.map((_, at) => 40 + at).join(' ')}`;
    expect(monthsOf(`${across('', 0)}\n${across('', 1)}\n${rain}`)).toEqual(cold);
    expect(monthsOf(`${across('Mean low', 0)}\n${across('', 1)}`)).toEqual(cold);
  });
});

describe('a scale at the figures', () => {
  const scaleOf = (typed: string): unknown => {
    const read = readMonths(typed);
    return read.ok ? [read.scale, read.months] : read.why;
  };
  const each = (unit: string): string =>
    COLD.map(([low, high], at) => `${MONTH_NAMES[at]} ${low}${unit} ${high}${unit}`).join('\n');

  test.each([
    [' \u00b0C'],
    ['\u00b0C'],
    ['C'],
    [' C'],
    [' \u2103'],
    [' \u00ba C'],
    [' deg C'],
    [' degrees Celsius'],
    [' celsius'],
  ])('“%s” is Celsius', (unit) => {
    expect(scaleOf(each(unit))).toEqual(['\u00b0C', cold]);
  });

  test('Fahrenheit, heads and labels count as well; without any none is said', () => {
    expect(scaleOf(each(' \u00b0F'))).toEqual(['\u00b0F', cold]);
    expect(scaleOf(`Month\tLow (\u00b0C)\tHigh (\u00b0C)\n${each('').replaceAll(' ', '\t')}`)).toEqual([
      '\u00b0C',
      cold,
    ]);
    const across = (label: string, at: 0 | 1): string => `${label} ${COLD.map((pair) => pair[at]).join(' ')}`;
    expect(scaleOf(`${across('Mean low \u00b0C', 0)}\n${across('Mean high \u00b0C', 1)}`)).toEqual(['\u00b0C', cold]);
    expect(scaleOf(each(''))).toEqual([undefined, cold]);
  });

  test('the same in both scales is read in the first of them; some in one and some in the other are asked about', () => {
    const both = COLD.map(
      ([low, high]) => `${low} \u00b0C (${low * 1.8 + 32} \u00b0F) ${high} \u00b0C (${high * 1.8 + 32} \u00b0F)`,
    );
    expect(scaleOf(both.join('\n'))).toEqual(['\u00b0C', cold]);
    const some = COLD.map(([low, high], at) =>
      at < 6 ? `${low} \u00b0C ${high} \u00b0C` : `${low} \u00b0F ${high} \u00b0F`,
    );
    expect(scaleOf(some.join('\n'))).toContain('type all of them in one');
  });

  test.each([
    ['on one line', ' ', ' '],
    ['on two', ' ', '\n'],
    ['on two, in their labels too', '\n', '\n'],
  ])('where only labels say that the other scale stands in brackets, the first is read: %s', (_, inLabel, inCell) => {
    const inFahrenheit = (celsius: number): string => (celsius * 1.8 + 32).toFixed(1).replace('-', '\u2212');
    const cell = (celsius: number): string =>
      `${celsius.toFixed(1).replace('-', '\u2212')}${inCell}(${inFahrenheit(celsius)})`;
    const across = (label: string, at: 0 | 1): string =>
      [`${label} \u00b0C${inLabel}(\u00b0F)`, ...COLD.map((pair) => cell(pair[at])), cell(8)].join('\t');
    const head = ['Month', ...MONTH_NAMES.map((name) => name.slice(0, 3)), 'Year'].join('\t');
    const rain = ['Average precipitation mm (inches)', ...COLD.map(() => `46${inCell}(1.8)`), '552 (21.7)'].join('\t');
    const table = [
      head,
      across('Record high', 1),
      across('Mean daily maximum', 1),
      across('Daily mean', 0),
      across('Mean daily minimum', 0),
      rain,
    ].join('\n');
    expect(scaleOf(table)).toEqual(['\u00b0C', cold]);
    const down = COLD.map(([low, high], at) => `${MONTH_NAMES[at]}\t${cell(low)}\t${cell(high)}`).join('\n');
    expect(scaleOf(`Month\tLow \u00b0C (\u00b0F)\tHigh \u00b0C (\u00b0F)\n${down}`)).toEqual(['\u00b0C', cold]);
  });
});
