// Worked examples that the function reference of Microsoft Support publishes, one page a function (support.microsoft.com,
// "NETWORKDAYS function" and so on), where it defines the function as OpenFormula does. The data of each example stands in a sheet of its own.

import { describe, expect, it } from 'vitest';
import { sheetOf, workedOut } from './formulas.ts';

const SHEETS = [
  sheetOf('Days', {
    Off: ['2012-11-22', '2012-12-04', '2013-01-21'],
    Closed: ['2008-11-26', '2008-12-04', '2009-01-21'],
  }),
  sheetOf('Thanks', { Off: ['2012-11-22'] }),
  sheetOf('Strength', { Value: [1345, 1301, 1368, 1322, 1310, 1370, 1318, 1350, 1303, 1299] }),
  sheetOf('Line', { Y: [2, 3, 9, 1, 8, 7, 5], X: [6, 5, 11, 7, 5, 4, 4] }),
  sheetOf('Short', { Y: [2, 3, 9, 1, 8], X: [6, 5, 11, 7, 5] }),
  sheetOf('Ahead', { Y: [6, 7, 9, 15, 21], X: [20, 28, 31, 38, 40] }),
  sheetOf('Twin', { One: [3, 2, 4, 5, 6], Other: [9, 7, 12, 15, 17] }),
  sheetOf('Ranks', { Value: [13, 12, 11, 8, 4, 3, 2, 1, 1, 1] }),
  sheetOf('Eight', { Value: [1, 2, 4, 7, 8, 9, 10, 12] }),
  sheetOf('Five', { Value: [7, 3.5, 3.5, 1, 2] }),
  sheetOf('Flow', { Paid: [-70000, 12000, 15000, 18000, 21000, 26000] }),
  sheetOf('Early', { Paid: [-70000, 12000, 15000, 18000, 21000] }),
];

/** Half a unit of the last digit printed. */
const EXAMPLES: readonly (readonly [formula: string, gives: number, within: number])[] = [
  ['NETWORKDAYS(DATE(2012;10;1); DATE(2013;3;1))', 110, 0],
  ['NETWORKDAYS(DATE(2012;10;1); DATE(2013;3;1); Thanks[Off])', 109, 0],
  ['NETWORKDAYS(DATE(2012;10;1); DATE(2013;3;1); Days[Off])', 107, 0],
  ['NETWORKDAYS(DATE(2013;3;1); DATE(2012;10;1))', -110, 0],
  ['DAYS(WORKDAY(DATE(2008;10;1); 151); DATE(2009;4;30)) / (1 day)', 0, 0],
  ['DAYS(WORKDAY(DATE(2008;10;1); 151; Days[Closed]); DATE(2009;5;5)) / (1 day)', 0, 0],
  ['WEEKNUM(DATE(2012;3;9))', 10, 0],
  ['WEEKNUM(DATE(2012;3;9); 2)', 11, 0],
  ['WEEKDAY(DATE(2008;7;8))', 3, 0],
  ['DATEDIF(DATE(2001;6;1); DATE(2002;8;15); "D")', 440, 0],
  ['DATEDIF(DATE(2001;6;1); DATE(2002;8;15); "YD")', 75, 0],
  ['DATEDIF(DATE(2001;6;1); DATE(2002;8;15); "MD")', 14, 0],
  ['YEARFRAC(DATE(2012;1;1); DATE(2012;7;30))', 0.58055556, 5e-9],
  ['STDEV(Strength[Value])', 27.46391572, 5e-9],
  ['STDEVP(Strength[Value])', 26.05455814, 5e-9],
  ['VAR(Strength[Value])', 754.2666667, 5e-8],
  ['VARP(Strength[Value])', 678.84, 5e-3],
  // Printed digits are cut off here.
  ['GEOMEAN(4;5;8;7;11;4;3)', 5.476986969, 1e-9],
  ['HARMEAN(4;5;8;7;11;4;3)', 5.028375962, 5e-10],
  ['DEVSQ(4;5;8;7;11;4;3)', 48, 0],
  ['MODE(5.6;4;4;3;2;4)', 4, 0],
  ['MEDIAN(1;2;3;4;5;6)', 3.5, 0],
  ['SLOPE(Line[Y]; Line[X])', 0.305556, 5e-7],
  ['INTERCEPT(Short[Y]; Short[X])', 0.0483871, 5e-8],
  ['STEYX(Line[Y]; Line[X])', 3.305719, 5e-7],
  ['FORECAST(30; Ahead[Y]; Ahead[X])', 10.60725309, 5e-9],
  ['CORREL(Twin[One]; Twin[Other])', 0.997054486, 5e-10],
  ['COVAR(Twin[One]; Twin[Other])', 5.2, 1e-12],
  ['PERCENTILE(Four[B]; 0.3)', 1.9, 1e-12],
  ['QUARTILE(Eight[Value]; 1)', 3.5, 0],
  // PERCENTRANK prints three digits, cut off.
  ['PERCENTRANK(Ranks[Value]; 2)', 0.3335, 5e-4],
  ['PERCENTRANK(Ranks[Value]; 4)', 0.5555, 5e-4],
  ['PERCENTRANK(Ranks[Value]; 8)', 0.6665, 5e-4],
  ['PERCENTRANK(Ranks[Value]; 5)', 0.5835, 5e-4],
  ['RANK(3.5; Five[Value]; 1)', 3, 0],
  ['RANK(7; Five[Value]; 1)', 5, 0],
  ['NORM.DIST(42; 40; 1.5; TRUE)', 0.9087888, 5e-8],
  ['BINOM.DIST(6; 10; 0.5; FALSE)', 0.205078125, 5e-10],
  ['BINOM.INV(6; 0.5; 0.75)', 4, 0],
  ['BINOM.DIST.RANGE(60; 0.75; 48)', 0.084, 5e-4],
  ['BINOM.DIST.RANGE(60; 0.75; 45; 50)', 0.524, 5e-4],
  ['POISSON.DIST(2; 5; TRUE)', 0.124652, 5e-7],
  ['POISSON.DIST(2; 5; FALSE)', 0.084224, 5e-7],
  ['IRR(Early[Paid])', -0.0212448, 5e-8],
  ['IRR(Flow[Paid])', 0.0866309, 5e-8],
  ['RATE(4 * 12; -200; 8000) * 12', 0.0924, 5e-5],
  ['DDB(2400; 300; 10 * 365; 1)', 1.32, 5e-3],
  ['DDB(2400; 300; 10 * 12; 1; 2)', 40, 5e-3],
  ['DDB(2400; 300; 10; 1; 2)', 480, 5e-3],
  ['DDB(2400; 300; 10; 2; 1.5)', 306, 5e-3],
  ['DDB(2400; 300; 10; 10)', 22.12, 5e-3],
  ['SLN(30000; 7500; 10)', 2250, 0],
];

describe('examples of a published function reference', () => {
  const answerTo = workedOut(
    EXAMPLES.map(([formula]) => formula),
    SHEETS,
  );
  it.each(EXAMPLES.map(([formula, gives, within]) => [formula, gives, within] as const))(
    '%s is %d',
    (formula, gives, within) => {
      const answer = answerTo(formula);
      if (answer.is !== 'value') throw new Error(JSON.stringify(answer));
      expect(Math.abs(Number(answer.value) - gives)).toBeLessThanOrEqual(within);
    },
  );
});
