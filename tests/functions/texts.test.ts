// Texts: formats worked out by hand, cutting by letters, reading numbers, joining as & joins.

import { describe, expect, it } from 'vitest';
import { workedOut } from './formulas.ts';

const SHOWN: readonly (readonly [formula: string, text: string])[] = [
  ['TEXT(1234.5; "0")', '1235'],
  ['TEXT(1234.5; "#,##0.00")', '1,234.50'],
  ['TEXT(1234567; "#,##0")', '1,234,567'],
  ['TEXT(5; "000")', '005'],
  ['TEXT(0.5; "#.##")', '.5'],
  ['TEXT(0.5; "0.##")', '0.5'],
  ['TEXT(3; "0.##")', '3'],
  ['TEXT(1.005; "0.00")', '1.01'],
  ['TEXT(-2.345; "0.0")', '-2.3'],
  ['TEXT(-0.001; "0.00")', '0.00'],
  ['TEXT(0.256; "0%")', '26%'],
  ['TEXT(0.256; "0.0%")', '25.6%'],
  ['TEXT(12345; "0.00E+00")', '1.23E+04'],
  ['TEXT(0.00012; "0.0E-00")', '1.2E-04'],
  ['TEXT(9.999; "0.0E+0")', '1.0E+1'],
  ['TEXT(0; "0.0E+0")', '0.0E+0'],
  ['TEXT(7; "0 ""beds""")', '7 beds'],
  ['TEXT(7; """Bed 0"" 0")', 'Bed 0 7'],
  ['TEXT(7; "\\#0")', '#7'],
  ['TEXT(-3; "0;(0);none")', '(3)'],
  ['TEXT(0; "0;(0);none")', 'none'],
  ['TEXT(2.5 money; "0.00")', '2.50'],
  ['TEXT(8 in; "0.0"; "cm")', '20.3 cm'],
  ['TEXT(4 ft2; "0"; "ft2")', '4 ft²'],
  ['TEXT(20 degC; "0"; "degF")', '68 °F'],
  ['TEXT(85%; "0.0"; "%")', '85.0%'],
  ['TEXT(DATE(2027;3;5); "yyyy-mm-dd")', '2027-03-05'],
  ['TEXT(DATE(2027;3;5); "d mmm yy")', '5 Mar 27'],
  ['TEXT(DATE(2027;3;5); "dddd d mmmm yyyy")', 'Friday 5 March 2027'],
  ['TEXT(DATE(2027;3;5); "ddd, ""week of"" d.m.")', 'Fri, week of 5.3.'],
  ['TEXT(TIME(14;5;9); "h:mm")', '14:05'],
  ['TEXT(TIME(14;5;9); "hh:mm:ss")', '14:05:09'],
  ['TEXT(1.5 day; "[h]:mm")', '36:00'],
  // Rounded to the smallest part named: 59.6 minutes are an hour.
  ['TEXT(59.6 min; "h:mm")', '1:00'],
  ['TEXT("word"; "0")', 'word'],
  ['FIXED(1234.567; 1)', '1,234.6'],
  ['FIXED(1234.567; -2; TRUE)', '1200'],
  ['CONCAT("Bed "; 3; ", "; 8 in)', 'Bed 3, 8 in'],
  ['CONCAT("Sown "; DATE(2027;3;15)) = "Sown " & DATE(2027;3;15)', 'yes'],
  ['TEXTJOIN(", "; TRUE; Plots[Plot]; "E")', 'A, B, C, D, E'],
  ['TEXTJOIN("-"; FALSE; Plots[Note])', 'early-late-late-'],
  ['TEXTJOIN("-"; TRUE; Plots[Note])', 'early-late-late'],
  ['LEFT("ça 🥕 va"; 4)', 'ça 🥕'],
  ['RIGHT("ça 🥕 va"; 4)', '🥕 va'],
  ['MID("ça 🥕 va"; 4; 1)', '🥕'],
  ['LEN("ça 🥕 va")', '7'],
  ['FIND("va"; "ça 🥕 va")', '6'],
  ['REPLACE("ça 🥕 va"; 4; 1; "-")', 'ça - va'],
  ['SUBSTITUTE("a-b-c"; "-"; "+"; 2)', 'a-b+c'],
  ['SUBSTITUTE("a-b-c"; "-"; "+"; 3)', 'a-b-c'],
  ['SEARCH("~?"; "why? yes")', '4'],
  ['SEARCH("(a"; "x(a)")', '2'],
  ['PROPER("butterhead LETTUCE")', 'Butterhead Lettuce'],
  ['TRIM("  two   words ")', 'two words'],
  ['UNICODE("🥕")', '129,365'],
  ['UNICHAR(233)', 'é'],
  ['VALUE("1,250.5")', '1250.5'],
  ['VALUE("-7 1/4")', '-7.25'],
  ['VALUE("85%")', '0.85'],
  ['T(5) = ""', 'yes'],
];

const WRONG: readonly (readonly [formula: string, is: 'error' | 'refused', says: string])[] = [
  ['VALUE("12 beds")', 'error', 'not a number'],
  ['VALUE("")', 'error', 'not a number'],
  ['DATEVALUE("1/2/2027")', 'error', 'not a date'],
  ['DATEVALUE("30 Feb 2027")', 'error', 'not a date'],
  ['TIMEVALUE("6:75")', 'error', 'not a time'],
  ['FIND("x"; "abc")', 'error', 'does not occur'],
  ['MID("abc"; 0; 1)', 'error', 'counted from 1'],
  ['LEFT("abc"; -1)', 'error', 'below 0'],
  ['REPT("ab"; 20000)', 'error', '32767'],
  ['CHAR(0)', 'error', '1 to 255'],
  ['CODE("")', 'error', 'no first letter'],
  ['TEXT(8 in; "0.0")', 'refused', 'TEXT(...; "0.0"; "in")'],
  ['TEXT(8 in; "0.0"; "lb")', 'refused', 'name a unit of its own kind'],
  ['TEXT(DATE(2027;3;5); "0.0")', 'refused', 'names year, month or day'],
  ['TEXT(5; "words")', 'refused', 'a place for digits'],
  ['TEXT(5; "0" & "0")', 'refused', 'in double quotes'],
  ['TEXT(TRUE; "0")', 'refused', 'yes or no'],
  ['TEXT(2 money; "0.00"; "kg")', 'refused', 'Leave the unit of money out'],
  ['CONCAT("Costs "; 2 money)', 'refused', 'joined with &'],
  ['TEXTJOIN(", "; TRUE; Plots[Star])', 'refused', 'a row of Stars'],
  ['LEFT(5; 1)', 'refused', 'wants text'],
];

const answer = workedOut([...SHOWN, ...WRONG].map(([formula]) => formula));

describe('texts', () => {
  it.each(SHOWN)('%s is %s', (formula, text) => {
    expect(answer(formula)).toMatchObject({ is: 'value', shown: text });
  });

  it.each(WRONG)('%s is %s: %s', (formula, is, says) => {
    expect(answer(formula)).toMatchObject({ is, why: expect.stringContaining(says) });
  });
});
