// Curves of one cell: points in the order of the values, and a sentence for what is no number.

import { expect, test } from 'vitest';
import { oneWay, readInputs, rowId, rows } from '../../engine/index.ts';
import { curveAgainst } from '../../ui/browser/what-if/curves-model.ts';
import { smallBook } from '../scratch/paper.ts';

const { workbook: book } = smallBook();

function curve(entries: string, formula: string) {
  const [slot = -1] = rows(book, 'plantings');
  const input = { sheet: 'plantings', row: rowId(book, 'plantings', slot), column: 'in-row-spacing' };
  const read = readInputs(book, input, entries);
  if (!read.ok) throw new Error(read.why);
  const tried = oneWay(book, { input, values: read.values }, [{ figure: 'formula', formula }]);
  if (!tried.ok) throw new Error(tried.why);
  const inputType = { kind: 'text' } as const;
  const answers = tried.cells.flatMap(([answer]) => answer ?? []);
  return curveAgainst(
    book,
    { input, inputName: 'Spacing', inputType, values: read.values },
    { name: formula, answers },
  );
}

// 50 ft at 6, 10 and 12 in is 100, 60 and 50 plants; the two others have 60 and 30.
const PLANTS = 'SUM(Plantings[Plants])';

test('the points stand in the order of the values, however they were written', () => {
  const drawn = curve('6 in; 12 in; 10 in', PLANTS);
  if (typeof drawn === 'string') throw new Error(drawn);
  expect(drawn.table?.rows).toEqual([
    ['6 in', '190'],
    ['10 in', '150'],
    ['12 in', '140'],
  ]);
  expect(drawn.says).toBe('Most, 190, at 6 in; least, 140, at 12 in.');
});

test('a value at which there is no number is named', () => {
  const drawn = curve('0 in; 6 in; 12 in', PLANTS);
  if (typeof drawn === 'string') throw new Error(drawn);
  expect(drawn.says).toBe('Most, 190, at 6 in; least, 140, at 12 in. No number at 0 in.');
});

test('figures that read alike are told once', () => {
  const drawn = curve('6 in; 12 in', `1000 + ${PLANTS} / 1000000`);
  if (typeof drawn === 'string') throw new Error(drawn);
  expect(drawn.says).toBe('About 1000 at every value tried.');
});

test.each([
  ['SUM(Plantings[Nonsense])', /^SUM\(Plantings\[Nonsense\]\) has no curve: .*Nonsense.*\.$/],
  ['1 / 0', /^1 \/ 0 has no curve: .+\.$/],
  ['"as it is"', /has no curve: it is no number at two of these values\.$/],
])('%s has no curve, and why', (formula, says) => {
  expect(curve('6 in; 12 in', formula)).toMatch(says);
});
