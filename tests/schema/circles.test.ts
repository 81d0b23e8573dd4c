// Formulas that go in a circle: which columns make one, in which order they are told, and that nothing else is held up.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkSchema } from '../../engine/schema/check.ts';
import { type Circles, findCircles } from '../../engine/schema/circles.ts';
import { layOver } from '../../engine/schema/lay-over.ts';
import { createVocabulary } from '../../engine/units/vocabulary.ts';
import { isError } from '../../engine/values/error.ts';
import { opened, type SheetDeclaration, templateOf } from '../book.ts';
import { computed, entered, plain, sheet } from '../workbook/small.ts';

const vocabulary = createVocabulary({ currency: 'EUR' });
const TEXT = { type: 'text' } as const;

/** The circles of some sheets, all of whose formulas must check. */
function circlesOf(...sheets: readonly SheetDeclaration[]): Circles {
  const schema = layOver(templateOf({ sheets }), {});
  const checked = checkSchema(schema, { units: 'us', vocabulary });
  expect(
    checked.formulas.flatMap(({ column, diagnostic }) => diagnostic?.why ?? (column === '' ? column : [])),
  ).toEqual([]);
  return findCircles(schema, checked);
}

/** One sheet of plain numbers with a formula each. */
function numbers(formulas: Readonly<Record<string, string>>): SheetDeclaration {
  return sheet('T', { columns: Object.entries(formulas).map(([name, formula]) => computed(name, plain, formula)) });
}

describe('within a sheet', () => {
  test('circles come in reading order; what hangs on one is in none, what feeds one neither', () => {
    const circles = circlesOf(numbers({ A: '[B]', B: '[C] + [E]', C: '[B]', D: '[D] + 1', E: '1' }));
    expect(circles).toEqual({ formulas: [['t/b', 't/c'], ['t/d']], rows: [] });
  });

  test('a circle is named, and only its own columns are in it', () => {
    expect(circlesOf(numbers({ A: '[B]', B: '[C]', C: '[A]', D: '[A]' }))).toEqual({
      formulas: [['t/a', 't/b', 't/c']],
      rows: [],
    });
  });

  test('where circles hang together each column stands on a way round', () => {
    expect(circlesOf(numbers({ A: '[B] + [C]', B: '[A]', C: '[D]', D: '[A]' })).formulas).toEqual([
      ['t/a', 't/b'],
      ['t/c', 't/d', 't/a'],
    ]);
  });

  test('a circle of two thousand is found, and a chain as long is none', () => {
    const long = (last: string) =>
      Object.fromEntries(Array.from({ length: 2000 }, (_, i) => [`N${i}`, i === 1999 ? last : `[N${i + 1}]`]));
    expect(circlesOf(numbers(long('[N0]'))).formulas.map(({ length }) => length)).toEqual([2000]);
    expect(circlesOf(numbers(long('7'))).formulas).toEqual([]);
  });

  test('a column is in a circle where it reaches itself, and every circle told is a way round', () => {
    const reads = fc.array(fc.uniqueArray(fc.nat({ max: 7 }), { maxLength: 3 }), { minLength: 8, maxLength: 8 });
    fc.assert(
      fc.property(reads, (all) => {
        const formula = (of: readonly number[]): string => ['1', ...of.map((k) => `[N${k}]`)].join(' + ');
        const { formulas } = circlesOf(numbers(Object.fromEntries(all.map((of, i) => [`N${i}`, formula(of)]))));
        const reaches = (from: number): ReadonlySet<number> => {
          const met = new Set<number>();
          const open = [...(all[from] ?? [])];
          for (let next = open.pop(); next !== undefined; next = open.pop()) {
            if (met.has(next)) continue;
            met.add(next);
            open.push(...(all[next] ?? []));
          }
          return met;
        };
        const wanted = all.flatMap((_, i) => (reaches(i).has(i) ? [`t/n${i}`] : []));
        expect([...new Set(formulas.flat())].sort()).toEqual(wanted);
        for (const circle of formulas) {
          const numbersOf = circle.map((column) => Number(column.slice('t/n'.length)));
          numbersOf.forEach((column, i) => {
            expect(all[column]).toContain(numbersOf[(i + 1) % numbersOf.length]);
          });
        }
      }),
    );
  });
});

describe('through other sheets', () => {
  const beds = (...columns: SheetDeclaration['columns']) =>
    sheet('Beds', { key: 'Bed', columns: [entered('Bed', TEXT), entered('Length', plain), ...columns] });
  const jobs = (...columns: SheetDeclaration['columns']) =>
    sheet('Jobs', {
      columns: [entered('Bed', { type: 'link', table: 'Beds' }), entered('Done', { type: 'date' }), ...columns],
    });

  test.each<readonly [string, readonly SheetDeclaration[], readonly (readonly string[])[]]>([
    [
      'a link one way and a total the other',
      [
        beds(computed('Used', plain, 'SUMIFS(Jobs[Share]; Jobs[Bed]; [Bed])')),
        jobs(computed('Share', plain, '[Bed].[Used] / 2')),
      ],
      [['beds/used', 'jobs/share']],
    ],
    [
      'two totals of columns that do not read each other',
      [
        beds(computed('Used', plain, 'SUMIFS(Jobs[Share]; Jobs[Bed]; [Bed])')),
        jobs(computed('Share', plain, '[Bed].[Length] / 2'), computed('Left', plain, '[Bed].[Used]')),
      ],
      [],
    ],
    [
      'the text of a link, which is the key it names',
      [
        sheet('Beds', { key: 'Bed', columns: [computed('Bed', TEXT, '"B" & COUNTIFS(Jobs[Label]; "<>")')] }),
        jobs(computed('Label', TEXT, '[Bed] & "!"')),
      ],
      [['beds/bed', 'jobs/label']],
    ],
    [
      'a sheet of criteria',
      [
        beds(computed('Found', plain, 'DSUM(Jobs; "Share"; Wanted)')),
        jobs(computed('Share', plain, '1')),
        sheet('Wanted', { columns: [computed('Share', TEXT, '">" & SUM(Beds[Found])')] }),
      ],
      [['beds/found', 'wanted/share']],
    ],
    [
      'the condition that says which rows there are',
      [
        beds(computed('Chosen', plain, "ROWS('Long beds')")),
        sheet('Long beds', {
          rows: { from: 'each', table: 'Beds', as: 'Bed', where: '[Bed].[Chosen] > 5' },
          columns: [],
        }),
      ],
      [['beds/chosen', 'long-beds/·where']],
    ],
    [
      'the end of a span of days',
      [
        sheet('Farm', { rows: { from: 'single' }, columns: [computed('Weeks', plain, 'ROWS(Weeks)')] }),
        sheet('Weeks', {
          rows: {
            from: 'span',
            first: 'DATE(2027; 1; 4)',
            last: 'DATE(2027; 1; 4) + Farm[Weeks] * 7 days',
            step: 'week',
            as: 'Week',
          },
          columns: [],
        }),
      ],
      [['farm/weeks', '·span of weeks/·last']],
    ],
    [
      'dates of which there is a row each',
      [
        beds(computed('Turned', { type: 'date' }, 'DATE(2027; 1; 1) + ROWS(Calendar) * 1 day')),
        sheet('Calendar', {
          rows: {
            from: 'events',
            dates: [{ table: 'Beds', column: 'Turned', event: 'Turn', about: 'Bed' }],
            as: 'Date',
            event: 'Job',
          },
          columns: [],
        }),
      ],
      [['beds/turned']],
    ],
    [
      'pairs, one of whose sheets follows from what is counted of them',
      [
        beds(computed('Chosen', plain, 'ROWS(Pairs)')),
        sheet('Long beds', {
          rows: { from: 'each', table: 'Beds', as: 'Bed', where: '[Bed].[Chosen] > 5' },
          columns: [],
        }),
        sheet('Pairs', {
          rows: { from: 'pairs', tables: ['Beds', 'Long beds'], as: ['Bed', 'Long bed'], where: '' },
          columns: [],
        }),
      ],
      [['beds/chosen', 'long-beds/·where']],
    ],
    [
      'what a check says, which no one reads',
      [
        {
          ...beds(computed('Half', plain, '[Length] / 2')),
          checks: [
            { name: 'full', level: 'warning', column: 'Half', says: 'IF(SUM(Beds[Half]) > 5; [Bed] & " is long.")' },
          ],
        },
      ],
      [],
    ],
  ])('%s', (_, sheets, formulas) => {
    expect(circlesOf(...sheets)).toEqual({ formulas, rows: [] });
  });

  test('sheets whose rows follow from each other are named by themselves', () => {
    const each = (name: string, table: string, where = ''): SheetDeclaration =>
      sheet(name, { rows: { from: 'each', table, as: 'Other', where }, columns: [] });
    expect(circlesOf(each('One', 'Two'), each('Two', 'One'), each('Three', 'One'))).toEqual({
      formulas: [],
      rows: ['one', 'two'],
    });
    expect(circlesOf(each('One', 'One'))).toEqual({ formulas: [], rows: ['one'] });
  });
});

test('columns beside a circle are worked out; what hangs on it has its error', () => {
  const book = opened({
    title: 'Circles',
    units: 'us',
    currency: 'EUR',
    today: 20_700,
    sheets: [
      sheet('T', {
        columns: [
          entered('Given', plain),
          computed('A', plain, '[B] * 2'),
          computed('B', plain, '[C] + [E]'),
          computed('C', plain, '[B]'),
          computed('E', plain, '[Given] + 1'),
          computed('F', plain, 'IFERROR([A]; [E])'),
        ],
      }),
    ],
    rows: { T: [{ Given: 3 }, { Given: 4 }] },
  });
  const told = (column: string) =>
    [...book.rows('T')].map((row) => {
      const value = book.value('T', row, column);
      return isError(value) ? value.error : value;
    });
  expect(told('B')).toEqual(['circle', 'circle']);
  expect(told('C')).toEqual(['circle', 'circle']);
  expect(told('A')).toEqual(['circle', 'circle']);
  expect(told('E')).toEqual([4, 5]);
  expect(told('F')).toEqual([4, 5]);
  const diagnostic = book.column('T', 'C')?.diagnostic;
  expect(diagnostic).toEqual({
    from: 0,
    to: 3,
    why: 'These formulas go in a circle: [B] reads [C] reads [B]. Change one of them so that it no longer needs the others.',
    circle: true,
  });
  expect(book.column('T', 'A')?.diagnostic).toBeUndefined();
  // Put right, all is worked out.
  book.edit([{ edit: 'formula', table: 'T', column: 'C', formula: '[Given]' }]);
  expect([told('A'), told('B'), told('C')]).toEqual([
    [14, 18],
    [7, 9],
    [3, 4],
  ]);
});
