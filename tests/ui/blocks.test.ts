// Blocks of other programs: cells that reach over several columns and rows, rows that are hidden, values behind texts.

import { expect, test } from 'vitest';
import { withKnown, withoutStyles } from '../../ui/browser/grid/clipboard/block.ts';
import { type Spanning, spreadOut } from '../../ui/browser/grid/clipboard/spans.ts';

function cell(text: string, across = 1, down = 1): Spanning<string> {
  return { cell: text, across, down };
}

test('what stands beside a cell that reaches downwards stays in its own column', () => {
  const rows = [
    [cell('tools', 1, 2), cell('100'), cell('1 Mar')],
    [cell('200'), cell('13 Apr')],
    [cell('wire'), cell('300'), cell('2 May')],
  ];
  expect(spreadOut(rows, '')).toEqual([
    ['tools', '100', '1 Mar'],
    ['', '200', '13 Apr'],
    ['wire', '300', '2 May'],
  ]);
});

test('cells reach over columns and rows at once, at the end of a line, past the last row and, with 0, down to it', () => {
  expect(spreadOut([[cell('a', 2, 2), cell('b')], [cell('c')]], '')).toEqual([
    ['a', '', 'b'],
    ['', '', 'c'],
  ]);
  expect(spreadOut([[cell('a'), cell('b', 1, 9)], [cell('c')], [cell('d')]], '')).toEqual([
    ['a', 'b'],
    ['c', ''],
    ['d', ''],
  ]);
  expect(spreadOut([[cell('a', 1, 0), cell('b')], [cell('c')], []], '')).toEqual([['a', 'b'], ['', 'c'], ['']]);
});

test('a value is known of the very text that it stands behind, however that breaks its lines, and of no other', () => {
  expect(withKnown({ text: '1,234' }, { text: '1,234', value: 1234 })).toEqual({ text: '1,234', value: 1234 });
  expect(withKnown({ text: '$ -\u00a0' }, { text: '$-', value: 0 })).toEqual({ text: '$ -\u00a0', value: 0 });
  expect(withKnown({ text: '200.00' }, { text: '4/13/2027', value: 46490 })).toEqual({ text: '200.00' });
  expect(withKnown({ text: '200.00' }, undefined)).toEqual({ text: '200.00' });
});

test('looks go, but what they hide stays hidden', () => {
  expect(withoutStyles('<style>td{color:red}</style><td style="color:red" sdval=1>1</td>')).toBe('<td sdval=1>1</td>');
  expect(withoutStyles("<tr height=0 style='display:none;mso-height-source:userset'>")).toBe('<tr height=0 hidden>');
  expect(withoutStyles('<tr style="height:0; display : none">')).toBe('<tr hidden>');
  expect(withoutStyles('<tr style=display:none>')).toBe('<tr hidden>');
  expect(withoutStyles('<tr style="mso-display:none-at-all">')).toBe('<tr>');
});
