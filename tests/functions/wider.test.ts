// Functions beyond the everyday ones, each on figures that a person can work out: ranks and trimmed means, look-ups from either end,
// loans and writing off, units of the standard, distributions with quantities. Invented plots of formulas.ts (lengths 10, 20, 30 ft;
// lows 10, 14, 15 degC; sown 1, 4, 8 March 2027).

import { describe, expect, it } from 'vitest';
import { loadLeftOut } from '../../engine/functions/elsewhere.ts';
import { sheetOf, workedOut } from './formulas.ts';

await loadLeftOut();

const SHEETS = [
  sheetOf('Ties', { X: [3, 4, 8, 1, 1], Y: [1, 5, 2, 7, 10] }),
  sheetOf('Eleven', { X: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11] }),
  sheetOf('Paid', { Sum: [-1000, 500, 605], On: ['2027-01-01', '2028-01-01', '2028-12-31'] }),
  sheetOf('Twins', { One: [5, 7, 9], Other: [4, 6, 5] }),
];

const SHOWN: readonly (readonly [formula: string, shown: string])[] = [
  ['RANK.AVG(1; Ties[X]; 1)', '1.5'],
  ['RANK.AVG(8; Ties[X])', '1'],
  ['RANK(1; Ties[X]; 1)', '1'],
  ['XMATCH(4; Ties[X])', '2'],
  ['XMATCH(1; Ties[X]; 0; -1)', '5'],
  ['XMATCH(5; Ties[X]; -1)', '2'],
  ['XMATCH(5; Ties[X]; 1)', '3'],
  ['XMATCH("?"; Plots[Plot]; 2)', '1'],
  ['XMATCH("LA*"; Plots[Note]; 2; -1)', '3'],
  ['XMATCH(25 ft; Plots[Length]; -1)', '2'],
  // Eleven values: a share of 1/4 lies on the third of twelve places, 1/12 on the first.
  ['PERCENTILE.EXC(Eleven[X]; 25%)', '3'],
  ['PERCENTILE.EXC(Eleven[X]; 1/12)', '1'],
  ['QUARTILE.EXC(Eleven[X]; 3)', '9'],
  ['PERCENTRANK.EXC(Eleven[X]; 3)', '0.25'],
  ['PERCENTRANK.INC(Eleven[X]; 6)', '0.5'],
  ['PERCENTILE.EXC(Plots[Sown]; 50%)', '4 Mar 2027'],
  // 20 % of eleven are 2.2: one from either end.
  ['TRIMMEAN(Eleven[X]; 20%)', '6'],
  ['TRIMMEAN(Ties[X]; 40%)', '2.667'],
  ['TRIMMEAN(Plots[Length]; 0)', '20 ft'],
  // Deviations -0.4 x -4 + 0.6 x 0 + 4.6 x -3 - 2.4 x 2 - 2.4 x 5 = -29.
  ['COVARIANCE.P(Ties[X]; Ties[Y]) * 5', '-29'],
  ['COVARIANCE.S(Ties[X]; Ties[Y]) * 4', '-29'],
  ['COVARIANCE.S(Plots[Length]; Plots[Length])', '100 ft²'],
  ['CEILING.MATH(-8.1; 2)', '-8'],
  ['CEILING.MATH(-8.1; 2; 1)', '-10'],
  ['FLOOR.MATH(-8.1; 2)', '-10'],
  ['FLOOR.MATH(-8.1; 2; 1)', '-8'],
  ['FLOOR.MATH(17 in; 5 in)', '15 in'],
  // 1,200 at 1 % a month: 12 of interest in the first month.
  ['IPMT(1%; 1; 24; 1200 money)', '-12.00 EUR'],
  ['IPMT(1%; 1; 24; 1200 money; 0 money; 1)', '0.00 EUR'],
  // 1 + 1.1 parts of 2,100 pay it back in two periods at 10 %: 1,000 and 1,100.
  ['PPMT(10%; 1; 2; 2100)', '-1000'],
  ['PPMT(10%; 2; 2; 2100)', '-1100'],
  ['IPMT(10%; 2; 2; 2100) + PPMT(10%; 2; 2; 2100) = PMT(10%; 2; 2100)', 'yes'],
  ['IPMT(10%; 2; 2; 2100; 0; 1) + PPMT(10%; 2; 2; 2100; 0; 1) = PMT(10%; 2; 2100; 0; 1)', 'yes'],
  ['EFFECT(20%; 2)', '0.21'],
  ['NOMINAL(21%; 2)', '0.2'],
  // 365 days at 10 % after 730 days: 500 / 1.1 + 605 / 1.21 = 454.55 + 500.
  ['ROUND(XNPV(10%; Paid[Sum]; Paid[On]); 2)', '-45.45'],
  ['ROUND(1000 * (1 + XIRR(Paid[Sum]; Paid[On])) ^ 2 - 500 * (1 + XIRR(Paid[Sum]; Paid[On])); 6)', '605'],
  // 500 x 1.1 + 605 = 1,155 after two years for 1,000 now.
  ['ROUND((1 + MIRR(Paid[Sum]; 5%; 10%)) ^ 2; 9)', '1.155'],
  // A rate of 1 - (100 / 800) ^ (1/3) = 0.5: 400, 200; seven months of the first year are 7/12.
  ['DB(800; 100; 3; 1)', '400'],
  ['DB(800; 100; 3; 2)', '200'],
  ['DB(1200; 150; 3; 1; 7)', '350'],
  ['DB(100 money; 200 money; 3; 1)', '0.00 EUR'],
  // Twice a fifth of what is left: 400, 240, 144; then 216 in equal parts of 108 are more than 86.4.
  ['VDB(1000; 0; 5; 0; 1)', '400'],
  ['VDB(1000; 0; 5; 0; 0.5)', '200'],
  ['VDB(1000; 0; 5; 1; 3)', '384'],
  ['VDB(1000; 0; 5; 3; 4)', '108'],
  ['VDB(1000; 0; 5; 3; 4; 2; TRUE)', '86.4'],
  // Differences 1, 1 and 4: mean 2, standard error 1.
  ['T.INV.2T(T.TEST(Twins[One]; Twins[Other]; 2; 1); 2)', '2'],
  ['T.TEST(Twins[One]; Twins[Other]; 2; 2) = 2 * T.DIST.RT(2 / SQRT(2.5 * 2 / 3); 4)', 'yes'],
  ['TTEST(Twins[One]; Twins[Other]; 1; 3) < T.TEST(Twins[One]; Twins[Other]; 2; 3)', 'yes'],
  ['T.DIST(0; 9; TRUE)', '0.5'],
  ['LEGACY.TDIST(2; 9; 2) = 2 * T.DIST.RT(2; 9)', 'yes'],
  ['T.DIST.2T(2; 9) = LEGACY.TDIST(2; 9; 2)', 'yes'],
  ['T.INV(5%; 9) = -T.INV.2T(10%; 9)', 'yes'],
  ['CHISQ.DIST(2 * LN(2); 2; TRUE)', '0.5'],
  ['CHISQ.INV(0; 3)', '0'],
  ['LEGACY.CHIINV(50%; 2) = 2 * LN(2)', 'yes'],
  ['F.DIST.RT(1; 2; 2)', '0.5'],
  ['F.INV(50%; 7; 7)', '1'],
  ['FDIST(3; 4; 5) + LEGACY.FDIST(3; 4; 5) = 1', 'yes'],
  ['GAMMA.DIST(2 ft; 1; 2 ft; TRUE) = 1 - EXP(-1)', 'yes'],
  ['GAMMA.INV(1 - EXP(-1); 1; 2 ft)', '2 ft'],
  ['EXPON.DIST(3; 2; FALSE) = 2 * EXP(-6)', 'yes'],
  ['WEIBULL.DIST(3 ft; 2; 3 ft; TRUE) = 1 - EXP(-1)', 'yes'],
  ['WEIBULL.DIST(1 ft; 1; 1 ft; FALSE) = EXP(-1) / (1 ft)', 'yes'],
  ['BETA.DIST(0.25; 1; 2; TRUE)', '0.438'],
  ['BETA.DIST(2; 1; 1; TRUE; 1; 3)', '0.5'],
  ['BETADIST(2; 1; 1; 1; 3)', '0.5'],
  ['BETA.INV(50%; 3; 3; 1; 3)', '2'],
  // Two of five beds drawn, of which two are early: none early is 3/5 x 2/4.
  ['HYPGEOM.DIST(0; 2; 2; 5; FALSE)', '0.3'],
  ['HYPGEOMDIST(1; 2; 2; 5)', '0.6'],
  ['HYPGEOM.DIST(1; 2; 2; 5; TRUE)', '0.9'],
  ['CONFIDENCE(10%; 2 lb; 16) = -NORM.S.INV(5%) * 0.5 lb', 'yes'],
  ['CONFIDENCE.T(10%; 2 lb; 16) = T.INV.2T(10%; 15) * 0.5 lb', 'yes'],
  ['CONVERT(1; "lbm"; "ozm")', '16 oz'],
  ['CONVERT(68; "F"; "C")', '20 °C'],
  ['CONVERT(0; "cel"; "K") = 0 degC', 'yes'],
  ['CONVERT(1; "oz"; "tbs")', '2 tbsp'],
  ['CONVERT(16; "oz"; "lb")', '1 lb'],
  ['CONVERT(1; "h"; "mn")', '60 min'],
  ['CONVERT(2; "yr"; "day")', '730.5 days'],
  ['CONVERT(1; "m2"; "cm2")', '10,000 cm²'],
  ['CONVERT(1; "uk_acre"; "ft2")', '43,560 ft²'],
  ['CONVERT(1; "ml"; "tspm")', '0.2 tspm'],
  ['CONVERT(1; "atm"; "kPa")', '101.325 kPa'],
  ['CONVERT(1; "HPh"; "BTU")', '2544.434 BTU'],
  ['CONVERT(60; "mph"; "m/s")', '26.822 m/s'],
  ['CONVERT(1; "Nmi"; "m") + 1 km', '2852 m'],
];

const WRONG: readonly (readonly [formula: string, is: 'error' | 'refused', says: string])[] = [
  ['XMATCH(5; Ties[X])', 'error', 'not in the column'],
  ['XMATCH(0; Ties[X]; -1)', 'error', 'lies above'],
  ['XMATCH(9; Ties[X]; 1)', 'error', 'lies below'],
  ['XMATCH(1; Ties[X]; 3)', 'error', 'XMATCH looks for'],
  ['PERCENTILE.EXC(Eleven[X]; 1%)', 'error', '1 / (n + 1)'],
  ['QUARTILE.EXC(Eleven[X]; 4)', 'error', 'Quarters are 1, 2'],
  ['TRIMMEAN(Eleven[X]; 100%)', 'error', 'below 1'],
  ['RANK.AVG(99; Ties[X])', 'error', 'no rank'],
  ['IPMT(1%; 25; 24; 1200)', 'error', 'count from 1'],
  ['DB(800; 100; 3; 5)', 'error', 'from 1 to the life'],
  ['VDB(800; 100; 3; 2; 4)', 'error', 'within the life'],
  ['VDB(1; 0; 1E9; 0; 1E9)', 'error', 'at most 10000'],
  ['XIRR(Ties[X]; Ties[Y])', 'refused', 'wants a date'],
  ['MIRR(Ties[X]; 5%; 5%)', 'error', 'some must be paid out'],
  ['T.DIST(1; 0.5; TRUE)', 'error', 'count from 1'],
  ['T.INV(0; 5)', 'error', 'between 0 and 1'],
  ['T.TEST(Twins[One]; Twins[One]; 2; 1)', 'error', 'alike'],
  ['T.TEST(Twins[One]; Twins[Other]; 3; 1)', 'error', '1 or 2 tails'],
  ['GAMMA.DIST(1 ft; 2; 3 lb; TRUE)', 'refused', 'a mass'],
  ['GAMMA.DIST(0; 0.5; 1; FALSE)', 'error', 'no bound'],
  ['BETA.DIST(1; 2; 3; TRUE; 4; 2)', 'error', 'first bound below'],
  ['HYPGEOM.DIST(1; 9; 2; 5; TRUE)', 'error', 'at most as many'],
  ['CONFIDENCE.T(10%; 2; 1)', 'error', '2 for t'],
  ['CONVERT(1; "T"; "ga")', 'refused', 'magnetism'],
  ['CONVERT(1; "kibyte"; "bit")', 'refused', 'information'],
  ['CONVERT(1; "lbm"; "ft")', 'refused', 'two units of one kind'],
  ['LOGNORM.DIST(1; 2; 3; TRUE)', 'refused', 'NORM.DIST of LN'],
  ['CUMIPMT(1; 2; 3)', 'refused', 'SUM of a column of IPMT'],
  ['CHIDIST(1; 2)', 'refused', 'LEGACY.CHIDIST'],
];

const answer = workedOut(
  [...SHOWN, ...WRONG].map(([formula]) => formula),
  SHEETS,
);

describe('the wider functions', () => {
  it.each(SHOWN)('%s is %s', (formula, shown) => {
    expect(answer(formula)).toMatchObject({ is: 'value', shown });
  });

  it.each(WRONG)('%s is %s: %s', (formula, is, says) => {
    expect(answer(formula)).toMatchObject({ is, why: expect.stringContaining(says) });
  });
});
