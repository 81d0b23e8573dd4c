import fc from 'fast-check';
import { expect, test } from 'vitest';
import { jsonFault } from '../../engine/formats/json-fault.ts';
import { layout } from '../../engine/formats/layout.ts';

function parses(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

test('laid-out data reads back as it was', () => {
  fc.assert(
    fc.property(fc.jsonValue(), (value) => {
      expect(JSON.parse(layout(value))).toEqual(JSON.parse(JSON.stringify(value)));
    }),
  );
});

test('a fault is found where JSON.parse finds one, and nowhere else', () => {
  const pieces = fc.constantFrom(
    '{',
    '}',
    '[',
    ']',
    ',',
    ':',
    '"a"',
    '"',
    '1',
    '-',
    '0.5',
    '01',
    'true',
    'nul',
    ' ',
    '\n',
    '\\',
  );
  const damaged = fc.tuple(fc.json(), fc.nat(), fc.nat(3), pieces).map(([text, at, drop, piece]) => {
    const from = at % (text.length + 1);
    return text.slice(0, from) + piece + text.slice(from + drop);
  });
  fc.assert(
    fc.property(
      fc.oneof(
        fc.json(),
        damaged,
        fc.array(pieces).map((all) => all.join('')),
      ),
      (text) => {
        expect([text, jsonFault(text) === undefined]).toEqual([text, parses(text)]);
      },
    ),
    { numRuns: 3000 },
  );
});

test.each([
  ['{"a": 1,\n "b": [1, 2', { line: 2, cutShort: true, found: '' }],
  ['{"a": "half a te', { line: 1, cutShort: true, found: '"half a te' }],
  ['{"a": 1\n "b": 2}', { line: 2, cutShort: false, found: '"b": 2}' }],
  ['{"a": tru', { line: 1, cutShort: true, found: 'tru' }],
  ["{'a': 1}", { line: 1, cutShort: false, found: "'a': 1}" }],
  ['{} {}', { line: 1, cutShort: false, found: '{}' }],
])('%j', (text, fault) => {
  expect(jsonFault(text)).toEqual(fault);
});
