// What is wrong with a cell of a scratch paper, in a sentence: ours where a function said it, else by the kind of fault and by the
// names in the formula. Called by room.ts.

import { ErrorType } from 'hyperformula';
import { saidHere } from './inside.ts';

const FAULTS: Readonly<Record<string, string>> = {
  DIV_BY_ZERO: 'It divides by zero or by a blank cell.',
  NAME: 'It names something that is not here: a function, or a column of the workbook with the unit in its name.',
  VALUE: 'A value of the wrong sort reached it: a text where a number is wanted, or many cells where one is.',
  NUM: 'There is no such number: it is too large, or a root of a negative.',
  NA: 'Nothing was found.',
  CYCLE: 'It follows from itself: one of the cells it reads reads this one.',
  REF: 'It reads a cell that is not there.',
  SPILL: 'Its figures want the cells beside or below, and something stands there.',
  ERROR: 'It cannot be read as a formula: look at its brackets and commas.',
};

const LET_UNREAD =
  'LET wants names and what they stand for in pairs and a formula at the end: LET(x,5,x*2). A name is a word that is no cell, and RAND can’t stand behind one.';

/** hyperformula's own words for what it tells apart by no kind. */
const MANY_IN_ONE = /^Cell range not allowed/;
const NO_ARGUMENTS = /^Wrong number of arguments/;
const NO_FUNCTION = /^Function name (.+) not recognized/;

/** How many cells it fills shows only once it is worked out, and a paper gives cells out before. */
export const MANY_FIGURES =
  'It gives several figures, and how many shows only once it is worked out: a paper cannot give them cells. Put it into SUM, COUNT, INDEX or another function that makes one of them.';

const ONE_OF_MANY =
  'The sign @ takes one of many cells by the row it stands in: leave it out for all, or name that cell.';
const FIXED_OFFSET =
  'OFFSET moves by numbers that are written out, and no others, since a paper must know beforehand which cells it reads: INDEX takes worked-out places.';

const ONE_BY_ONE =
  'A formula on a paper has no functions of its own: give each step a cell, or LET for a name within a formula.';
const BLOCKS =
  'Blocks of cells are not cut or joined like that here: INDEX takes cells, rows and columns out of them, and FILTER, SORT and UNIQUE choose.';
const OUTSIDE =
  'A paper reads nothing from outside while it is worked out: bring the figures in by the clipboard or a file.';

/** Functions of other spreadsheets that no paper has, and why. */
const NOT_HERE: ReadonlyMap<string, string> = new Map(
  (
    [
      [
        'INDIRECT',
        'INDIRECT says which cells it reads only once it is worked out, and a paper must know it before: name the cells, or choose among them with INDEX or CHOOSE.',
      ],
      ['LAMBDA MAP REDUCE SCAN BYROW BYCOL MAKEARRAY ISOMITTED', ONE_BY_ONE],
      ['TAKE DROP EXPAND CHOOSECOLS CHOOSEROWS TOCOL TOROW WRAPROWS WRAPCOLS TRIMRANGE GROUPBY PIVOTBY', BLOCKS],
      ['SORTBY', 'SORT orders a block by one of its own columns: put what it is ordered by beside it.'],
      ['RANDARRAY', 'RAND and RANDBETWEEN give one number by chance: put them into as many cells.'],
      ['LINEST LOGEST', 'SLOPE, INTERCEPT, RSQ and STEYX give the figures of a straight line one by one.'],
      ['GROWTH', 'TREND of LN, and EXP of what it gives, is the same.'],
      ['FREQUENCY', 'COUNTIFS with two conditions counts what lies between two bounds.'],
      ['CELL INFO', 'It tells of the program and not of the figures: there is nothing like it here.'],
      ['GETPIVOTDATA', 'There are no pivot tables here: SUMIFS adds up by conditions.'],
      ['WEBSERVICE IMPORTRANGE IMPORTDATA GOOGLEFINANCE STOCKHISTORY CUBEVALUE RTD DDE QUERY', OUTSIDE],
    ] as const
  ).flatMap(([names, why]) => names.split(' ').map((name) => [name, why] as const)),
);

/** Why a cell has no figure, from the kind of fault, hyperformula's message and the formula that stands in the cell. */
export function whyOf(type: string, message: string, formula: string): string | undefined {
  const said = saidHere(message);
  if (said !== undefined) return said;
  if (MANY_IN_ONE.test(message)) return MANY_FIGURES;
  if (NO_ARGUMENTS.test(message)) return 'One of its functions has too few arguments, or too many.';
  if (type === ErrorType.NAME && /\bLET\(/i.test(formula)) return LET_UNREAD;
  if (type === ErrorType.ERROR && /(?:^=|[-+*/^&=<>(,;])\s*@/.test(formula)) return ONE_OF_MANY;
  if (type === ErrorType.ERROR && /\bOFFSET\(/i.test(formula)) return FIXED_OFFSET;
  const [, name] = NO_FUNCTION.exec(message) ?? [];
  return NOT_HERE.get(name?.toUpperCase() ?? '') ?? FAULTS[type];
}
