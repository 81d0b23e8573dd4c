// Scratch papers in the workbook: kept as typed, undone in one line with the sheets' changes, in files and versions, followed
// by branches, and no figure of a sheet changes with them.

import { expect, test } from 'vitest';
import {
  type Command,
  readWorkbookFile,
  restoring,
  type Transaction,
  type Workbook,
  writeWorkbookFile,
} from '../../engine/index.ts';
import { BEGINNING, everything, openFarm, shelf, VERSION_2 } from './farm.ts';

const MESSAGE = { code: 'work', parts: {} };

function done(workbook: Workbook, ...commands: readonly Command[]): Transaction {
  const answer = workbook.do(commands, MESSAGE);
  if (answer.refused) throw new Error(answer.why);
  return answer.transaction;
}

function why(workbook: Workbook, command: Command): string {
  const answer = workbook.do([command], MESSAGE);
  return answer.refused ? answer.why : '';
}

const ADD: Command = { command: 'add paper', paper: 'p1', name: 'Scratch paper' };
const typed = (cells: Record<string, string>, paper = 'p1'): Command => ({ command: 'type on paper', paper, cells });

test('what is typed is kept, undone and done again in one line with the sheets’ changes', () => {
  const workbook = openFarm();
  const row = BEGINNING.rows.plantings?.[0]?.id ?? '';
  done(workbook, ADD, typed({ A1: '2', B1: '=A1*3' }));
  done(workbook, { command: 'set cell', sheet: 'plantings', row, column: 'length', entry: '9 ft' });
  done(workbook, typed({ A1: '5' }));
  const end = everything(workbook);
  workbook.undo();
  expect(workbook.document.papers.entry('p1', 'A1')).toBe('2');
  workbook.undo();
  workbook.undo();
  expect(workbook.data()).toEqual(openFarm().data());
  for (let i = 0; i < 3; i++) workbook.redo();
  expect(everything(workbook)).toEqual(end);
});

test('a change says which papers it touched and no cell of a sheet', () => {
  const workbook = openFarm();
  const answer = workbook.do([ADD, typed({ A1: '=SUM(Plantings_Length_ft)' })], MESSAGE);
  expect(!answer.refused && answer.change).toMatchObject({ papers: ['p1'], cells: [], settings: false });
});

test('a file holds the papers, and gives them back', () => {
  const workbook = openFarm();
  done(workbook, ADD, typed({ B2: '=A1*2', A1: 'Onions, "early"' }));
  const text = writeWorkbookFile(workbook.data());
  expect(text).toContain('"papers": { "p1": { "name": "Scratch paper", "cells": {');
  const read = readWorkbookFile(text, shelf(VERSION_2));
  expect(read.ok && read.data).toEqual(workbook.data());
  const spoilt = readWorkbookFile(text.replace('"B2": "=A1', '"B0": "=A1'), shelf(VERSION_2));
  expect(spoilt.ok && [spoilt.leftOut, spoilt.data.papers?.p1?.cells]).toEqual([true, { A1: 'Onions, "early"' }]);
});

test('an earlier version brings its papers back', () => {
  const workbook = openFarm();
  done(workbook, ADD, typed({ A1: '1', A2: '2' }));
  const { papers, ...rest } = workbook.data();
  done(workbook, typed({ A1: '', B1: 'more' }), { command: 'rename paper', paper: 'p1', name: 'Sums' });
  done(workbook, restoring({ ...rest, ...(papers === undefined ? {} : { papers }) }));
  expect(workbook.data().papers).toEqual(papers);
  done(workbook, restoring(BEGINNING));
  expect(workbook.data().papers).toBeUndefined();
});

test('a branch has papers of its own from where it began', () => {
  const workbook = openFarm();
  done(workbook, ADD, typed({ A1: '1' }));
  const branch = workbook.branch();
  done(branch, typed({ A1: '2' }));
  done(workbook, typed({ A2: '3' }));
  expect(branch.data().papers?.p1?.cells).toEqual({ A1: '2' });
  expect(workbook.data().papers?.p1?.cells).toEqual({ A1: '1', A2: '3' });
});

test('what one types on a paper that another throws away stays, in whichever order they hear of it', () => {
  const [anna, bert] = [openFarm(BEGINNING, 'anna'), openFarm(BEGINNING, 'bert')];
  const start = done(anna, ADD, typed({ A1: '1', B1: '2' }));
  bert.receive({ ...start, source: 'remote' });
  const gone = done(anna, { command: 'remove paper', paper: 'p1' });
  const kept = done(bert, typed({ C1: '=A1' }));
  anna.receive({ ...kept, source: 'remote' });
  bert.receive({ ...gone, source: 'remote' });
  expect(anna.data().papers).toEqual({ p1: { cells: { C1: '=A1' } } });
  expect(bert.data()).toEqual(anna.data());
});

test('what has no place is refused in words', () => {
  const workbook = openFarm();
  expect(why(workbook, typed({ A1: '1' }))).toBe('There is no such scratch paper any more.');
  done(workbook, ADD);
  expect(why(workbook, typed({ AAA1: '1' }))).toContain('AAA1 has no place there.');
  expect(why(workbook, typed({ A20001: '1' }))).toContain('row 20000');
  expect(why(workbook, { command: 'add paper', paper: 'p2', name: ' scratch PAPER ' })).toContain('already');
  expect(why(workbook, { command: 'rename paper', paper: 'p1', name: ' ' })).toContain('needs a name');
});
