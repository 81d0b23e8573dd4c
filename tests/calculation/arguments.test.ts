// Arguments of calls: plain numbers where a model counts in its own unit, arguments left out, edges of the range in which a
// model holds, groups of arguments that come round again.
import { describe, expect, test } from 'vitest';
import { answers } from '../functions/formulas.ts';

test.each([
  ['EMERGENCEAT("Onion"; 15)', 'EMERGENCEAT("Onion"; 15 degC)'],
  ['EMERGENCEAT("Onion"; 59 degF)', 'EMERGENCEAT("Onion"; 15 degC)'],
  ['LEAFAREA(500)', 'LEAFAREA(500 degC day)'],
  ['LEAFAREA(500 degC day)', 'LEAFAREA(900 degF day)'],
  ['LONGDAYFROM(44; 14; DATE(2027; 1; 1))', 'LONGDAYFROM(44; 840 min; DATE(2027; 1; 1))'],
  ['LOG(100)', 'LOG(100; 10)'],
  ['LOG(100; )', 'LOG(100; 10)'],
  ['ROUND(2.5)', 'ROUND(2.5; 0)'],
  ['LEFT("beet")', 'LEFT("beet"; 1)'],
  ['LEFT("beet"; )', 'LEFT("beet"; 1)'],
  ['IFS(FALSE; 1; FALSE; 2; TRUE; 3)', 'IFS(TRUE; 3)'],
])('%s is %s', (one, other) => {
  const [a, b] = answers([one, other]);
  expect(a?.is).toBe('value');
  expect(a).toEqual(b);
});

describe('a range', () => {
  test('holds at both its ends', () => {
    const [low, high] = answers(['EMERGENCEAT("Onion"; 0 degC)', 'EMERGENCEAT("Onion"; 40 degC)']);
    expect(low?.is).not.toBe('error');
    expect(high?.is).not.toBe('error');
  });

  test('is named in the sentence outside it', () => {
    const [cold, hot] = answers(['EMERGENCEAT("Onion"; -0.1 degC)', 'EMERGENCEAT("Onion"; 40.1 degC)']);
    expect(cold).toMatchObject({
      is: 'error',
      why: expect.stringMatching(
        /^EMERGENCEAT: [a-z ]+ is outside the range in which this holds \(.+\)\. Give a value inside it\.$/,
      ),
    });
    expect(hot).toEqual(cold);
  });
});
