// The ranges of the OpenFormula collection's fixture that are not whole sheets of ../functions/formulas.ts: its criteria
// (B36:H39), a sheet for each range that a case names, and the constellations from their second and third column on. The
// second condition on bright stars is <2: it is the one with which all results of the collection agree.
//
// Copyright (C) OASIS Open 2006. All Rights Reserved.
//
// This document and translations of it may be copied and furnished to others, and derivative works that comment on or
// otherwise explain it or assist in its implementation may be prepared, copied, published, and distributed, in whole or
// in part, without restriction of any kind, provided that the above copyright notice and this paragraph are included on
// all such copies and derivative works. However, this document itself may not be modified in any way, such as by removing
// the copyright notice or references to OASIS, except as needed for the purpose of developing OASIS specifications, in
// which case the procedures for copyrights defined in the OASIS Intellectual Property Rights document must be followed, or
// as required to translate it into languages other than English.

import { STARS, type Table } from '../functions/formulas.ts';

const TEXT = { type: 'text' } as const;
const YESNO = { type: 'yesno' } as const;
const NUMBER = { type: 'number', unit: { us: '', si: '' } } as const;

function criteria(name: string, columns: Table['columns'], ...rows: Table['rows']): Table {
  return { name, key: undefined, columns, rows };
}

/** The constellations without their first columns. */
function from(name: string, skipped: number): Table {
  return {
    name,
    key: undefined,
    columns: Object.fromEntries(Object.entries(STARS.columns).slice(skipped)),
    rows: STARS.rows.map((row) => row.slice(skipped)),
  };
}

const BRIGHT = { 'Bright Stars': NUMBER };
const BRIGHT_TEXT = { 'Bright Stars': TEXT };

export const SHEETS: readonly Table[] = [
  criteria('B36_B37', BRIGHT, ['4']),
  criteria('B36_B38', BRIGHT_TEXT, ['4'], ['<2']),
  criteria('B36_C37', { ...BRIGHT, Northern: YESNO }, ['4', 'yes']),
  criteria('B36_C38', { ...BRIGHT_TEXT, Northern: YESNO }, ['4', 'yes'], ['<2', 'yes']),
  criteria(
    'B36_D38',
    { ...BRIGHT_TEXT, Northern: YESNO, Constellation: TEXT },
    ['4', 'yes', 'Ursa Major'],
    ['<2', 'yes', 'Constellation'],
  ),
  criteria('D36_D37', { Constellation: TEXT }, ['Ursa Major']),
  criteria('E36_E37', { Decl: TEXT }, ['<0']),
  criteria('F36_F37', { Rev: TEXT }, ['<=7']),
  criteria('G36_G37', BRIGHT_TEXT, ['<4']),
  criteria('G36_G38', BRIGHT_TEXT, ['<4'], ['>=8']),
  criteria('H36_H37', { Date: TEXT }, ['>1950-01-01']),
  criteria('H38_H39', { CONSTELLATION: TEXT }, ['URSA MAJOR']),
  from('B19_I31', 1),
  from('C19_I31', 2),
];
