// What comes of quantities, dates and temperatures in the standard functions: the value with its unit, or the sentence that
// refuses. Figures are worked out by hand from the invented plots of formulas.ts (lengths 10, 20, 30 ft; areas 25, 50, 75 ft2;
// yields 20, 38, 63 lb; sown 1, 4, 8 March 2027; lows 10, 14, 15 degC; one row blank).

import { describe, expect, it } from 'vitest';
import { loadLeftOut } from '../../engine/functions/elsewhere.ts';
import { answers, workedOut } from './formulas.ts';

await loadLeftOut();

const GIVES: readonly (readonly [formula: string, shown: string])[] = [
  ['SUM(Plots[Length])', '60 ft'],
  ['SUM(1 ft; 6 in)', '1.5 ft'],
  ['SUMSQ(Plots[Length])', '1400 ft²'],
  ['SQRT(25 ft2)', '5 ft'],
  ['POWER(2 ft; 1 + 1)', '4 ft²'],
  ['ABS(-3 lb)', '3 lb'],
  ['SIGN(-3 lb)', '-1'],
  ['MOD(17 in; 1 ft)', '5 in'],
  ['MOD(50 ft; 8 in)', '0 ft'],
  ['QUOTIENT(17 in; 5 in)', '3'],
  ['ATAN2(1 ft; 12 in) * 4 / PI()', '1'],
  ['MIN(Plots[Low]) = 10 degC', 'yes'],
  ['MAX(Plots[Sown])', '8 Mar 2027'],
  ['AVERAGE(Plots[Low]) = 13 degC', 'yes'],
  // 1, 4 and 8 March: the mean is 4 1/3 March, the nearest whole day the fourth.
  ['AVERAGE(Plots[Sown])', '4 Mar 2027'],
  ['MEDIAN(Plots[Sown])', '4 Mar 2027'],
  ['MEDIAN(DATE(2027;3;1); DATE(2027;3;4))', '3 Mar 2027'],
  ['STDEV(Plots[Length])', '10 ft'],
  ['VAR(Plots[Length])', '100 ft²'],
  // Lows lie -3, 1 and 2 degC from their mean: 14 / 3 Cdeg2, in Fahrenheit degrees 14 / 3 x 3.24.
  ['VARP(Plots[Low])', '15.12 Fdeg²'],
  ['AVEDEV(Plots[Sown]) < 3 days', 'yes'],
  ['COUNT(Plots[Length])', '3'],
  ['COUNTA(Plots[Note])', '3'],
  ['COUNTA(Plots[Star])', '3'],
  ['COUNTBLANK(Plots[Note])', '1'],
  ['LARGE(Plots[Sown]; 1)', '8 Mar 2027'],
  ['SMALL(Plots[Yield]; 2)', '38 lb'],
  ['PERCENTILE(Plots[Length]; 75%)', '25 ft'],
  ['QUARTILE(Plots[Length]; 1)', '15 ft'],
  // A quarter of the way lies 1.5 days after 1 March; halves go up.
  ['PERCENTILE(Plots[Sown]; 25%)', '3 Mar 2027'],
  ['RANK(20 ft; Plots[Length])', '2'],
  ['RANK(10 ft; Plots[Length]; 1)', '1'],
  ['PERCENTRANK(Plots[Length]; 15 ft)', '0.25'],
  // 20 x 25 + 38 x 50 + 63 x 75 = 7125.
  ['SUMPRODUCT(Plots[Yield]; Plots[Area]) / (1 lb) / (1 ft2)', '7125'],
  ['SUMPRODUCT(Plots[Length]; Plots[Length])', '1400 ft²'],
  // Yields on areas: slope (63 - 20) / (75 - 25) = 0.86, means 121/3 lb and 50 ft2.
  ['SLOPE(Plots[Yield]; Plots[Area])', '0.86 lb/ft²'],
  ['ROUND(INTERCEPT(Plots[Yield]; Plots[Area]); 0.001 lb)', '-2.667 lb'],
  ['ROUND(FORECAST(60 ft2; Plots[Yield]; Plots[Area]); 0.001 lb)', '48.933 lb'],
  ['FORECAST(60 ft2; Plots[Sown]; Plots[Area])', '6 Mar 2027'],
  ['CORREL(Plots[Length]; Plots[Area])', '1'],
  ['COVAR(Plots[Length]; Plots[Length])', '66.667 ft²'],
  ['SUMXMY2(Plots[Length]; Plots[Length])', '0 ft²'],
  ['SUMIFS(Plots[Yield]; Plots[Note]; "late")', '101 lb'],
  ['SUMIF(Plots[Length]; ">15 ft")', '50 ft'],
  ['SUMIF(Plots[Note]; "late"; Plots[Yield])', '101 lb'],
  ['AVERAGEIFS(Plots[Sown]; Plots[Note]; "late")', '6 Mar 2027'],
  ['AVERAGEIF(Plots[Length]; ">15 ft")', '25 ft'],
  ['MAXIFS(Plots[Low]; Plots[Note]; "late") = 15 degC', 'yes'],
  ['COUNTIFS(Plots[Star]; "Draco")', '2'],
  ['COUNTIF(Plots[Length]; ">=20 ft")', '2'],
  ['XLOOKUP("b"; Plots[Plot]; Plots[Yield])', '38 lb'],
  ['XLOOKUP("Z"; Plots[Plot]; Plots[Yield]; 0 lb)', '0 lb'],
  ['LOOKUP(25 ft; Plots[Length]; Plots[Price])', '3.00 EUR'],
  ['MATCH(25 ft; Plots[Length]; 1)', '2'],
  ['MATCH("c"; Plots[Plot]; 0)', '3'],
  ['INDEX(Plots[Yield]; 2)', '38 lb'],
  ['ROWS(Plots)', '4'],
  ['COLUMNS(Plots)', '9'],
  ['CONVERT(10; "in"; "cm")', '25.4 cm'],
  ['CONVERT(20; "degC"; "degF")', '68 °F'],
  ['DAYS(DATE(2027;3;15); DATE(2027;3;1))', '14 days'],
  ['TIME(6; 30; 0)', '6.5 h'],
  ['HOUR(30.5 h)', '6'],
  ['MINUTE(30.5 h)', '30'],
  ['N(TRUE)', '1'],
  ['N(INDEX(Plots[Yield]; 4))', '0 lb'],
  ['ISNUMBER(DATE(2027;1;1))', 'yes'],
  ['ISNUMBER(INDEX(Plots[Yield]; 4))', 'no'],
  ['ISBLANK(INDEX(Plots[Yield]; 4))', 'yes'],
  ['NORM.DIST(10 cm; 10 cm; 2 cm; TRUE)', '0.5'],
  ['NORM.INV(50%; 10 cm; 2 cm)', '10 cm'],
  ['NORM.INV(50%; DATE(2027;4;15); 10 days)', '15 Apr 2027'],
  ['STANDARDIZE(14 cm; 10 cm; 2 cm)', '2'],
  ['PMT(0; 10; 1000 money)', '-100.00 EUR'],
  ['NPV(100%; 4 money; 5 money; 7 money)', '4.13 EUR'],
  ['IF(1 > 2; 3 lb; 2 lb)', '2 lb'],
  ['IFNA(IF(1 > 2; "x"; NA()); "none")', 'none'],
  ['IFERROR(1 lb / 0; 2 lb)', '2 lb'],
  ['SWITCH(2; 1; 1 ft; 2; 2 ft; 3 ft)', '2 ft'],
  ['SWITCH(7; 1; 1 ft; 2; 2 ft; 3 ft)', '3 ft'],
  ['IFS(FALSE; 1 lb; TRUE; 2 lb)', '2 lb'],
  ['CHOOSE(2; 1 ft; 2 ft)', '2 ft'],
];

const REFUSED: readonly (readonly [formula: string, says: string])[] = [
  ['SUM(1 ft; 2)', 'write 2 ft'],
  ['SUM(Plots[Note])', 'wants a number or a quantity'],
  ['ROUND(17.3 in; 2)', 'ROUND(...; 1 in)'],
  ['ROUND(7; 2 in)', 'the step is a length'],
  ['CEILING(130 in)', 'CEILING(...; 1 in)'],
  ['INT(3.7 ft)', 'FLOOR(...; 1 ft)'],
  ['TRUNC(3.7 ft; 1)', 'ROUNDDOWN(...; 1 ft)'],
  ['POWER(2 ft; LEN("ab"))', 'write it as a number'],
  ['SUMPRODUCT(Plots[Note]; Plots[Length])', "can't be multiplied"],
  ['SUMPRODUCT(Plots[Length]; Two[B])', 'stand in two'],
  ['NORM.DIST(12 cm; 10 cm; 2; TRUE)', 'it should be a length'],
  ['N(DATE(2027;1;1))', 'subtract another date'],
  ['CONVERT(10; "lb"; "ft")', 'two units of one kind'],
  ['CONVERT(10; "lbx"; "kg")', 'did you mean lb'],
  ['HLOOKUP("B"; Plots; 2)', 'XLOOKUP'],
  ['RAND()', 'must give the same twice'],
];

const ERRORS: readonly (readonly [formula: string, says: string])[] = [
  ['AVERAGEIFS(Plots[Yield]; Plots[Note]; "never")', 'nothing to average'],
  ['STDEV(1 lb)', 'Too few values'],
  ['LARGE(Plots[Length]; 4)', 'no such place'],
  ['INDEX(Plots[Yield]; 9)', 'no such row'],
  ['MATCH("z"; Plots[Plot]; 0)', 'not in the column'],
  ['RANK(11 ft; Plots[Length])', 'no rank'],
  ['SQRT(-1 ft2)', 'no square root'],
  ['EXP(1000)', 'too large'],
  ['NORM.INV(100%; 1; 1)', 'between 0 and 1'],
  ['BINOM.DIST(11; 10; 50%; TRUE)', 'successes'],
  ['WORKDAY(DATE(2027;1;1); 5; ; "Mon Tue Wed Thu Fri Sat Sun")', 'without a working day'],
  ['CHOOSE(3; 1; 2)', 'between 1 and 2'],
];

const answer = workedOut([...GIVES, ...REFUSED, ...ERRORS].map(([formula]) => formula));

describe('types through the standard functions', () => {
  it.each(GIVES)('%s is %s', (formula, shown) => {
    expect(answer(formula)).toMatchObject({ is: 'value', shown });
  });

  it.each(REFUSED)('%s is refused: %s', (formula, says) => {
    expect(answer(formula)).toMatchObject({ is: 'refused', why: expect.stringContaining(says) });
  });

  it.each(ERRORS)('%s is an error: %s', (formula, says) => {
    expect(answer(formula)).toMatchObject({ is: 'error', why: expect.stringContaining(says) });
  });

  it('gives blank for the extremes of nothing', () => {
    for (const blank of answers([
      'MINIFS(Plots[Sown]; Plots[Note]; "never")',
      'IF(FALSE; 1 lb)',
      'INDEX(Plots[Yield]; 4)',
    ])) {
      expect(blank).toEqual({ is: 'blank' });
    }
  });
});
