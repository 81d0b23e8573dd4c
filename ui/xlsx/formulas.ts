// The formulas in an XLSX file's parts, by sheet and place, which readers of figures leave out (ECMA-376 part 1, 18.3.1.40). Formulas
// that share a text are told with the place of the first, for whoever moves them.

import type { Parts } from './unpack.ts';

export interface FoundFormula {
  /** 'B12'. */
  readonly cell: string;
  /** Without its =, as it stands in the cell `from`. */
  readonly formula: string;
  readonly from: string;
}

/** By the sheet's name. */
export function formulasIn(parts: Parts): ReadonlyMap<string, readonly FoundFormula[]> {
  return new Map([...sheetPaths(parts)].map(([name, path]) => [name, formulasOf(textOf(parts, path))]));
}

/** The part of each sheet, by the sheet's name, as the workbook's own parts tell it; nothing else need be unpacked for it. */
export function sheetPaths(parts: Parts): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  const targets = new Map<string, string>();
  for (const [tag] of textOf(parts, 'xl/_rels/workbook.xml.rels').matchAll(/<Relationship\b[^>]*>/g))
    targets.set(attribute(tag, 'Id'), attribute(tag, 'Target'));
  for (const [tag] of textOf(parts, 'xl/workbook.xml').matchAll(/<(?:\w+:)?sheet\b[^>]*>/g)) {
    const target = targets.get(attribute(tag, 'r:id')) ?? '';
    const path = target.startsWith('/') ? target.slice(1) : `xl/${target}`;
    found.set(attribute(tag, 'name'), path);
  }
  return found;
}

function formulasOf(sheet: string): readonly FoundFormula[] {
  const shared = new Map<string, { readonly formula: string; readonly from: string }>();
  const found: FoundFormula[] = [];
  for (const [, open = '', inside = ''] of sheet.matchAll(/<(?:\w+:)?c\b([^>]*[^/>])>(.*?)<\/(?:\w+:)?c>/gs)) {
    const cell = attribute(open, 'r');
    const [, told = '', , text = ''] = /<(?:\w+:)?f\b([^>]*?)(\/>|>(.*?)<\/(?:\w+:)?f>)/s.exec(inside) ?? [];
    if (cell === '' || !/<(?:\w+:)?f\b/.test(inside)) continue;
    const formula = plainText(text).replace(/_xl(?:fn|ws|pm)\./g, '');
    const group = attribute(told, 't') === 'shared' ? attribute(told, 'si') : '';
    if (group !== '' && formula !== '') shared.set(group, { formula, from: cell });
    const first = formula === '' ? shared.get(group) : { formula, from: cell };
    if (first !== undefined) found.push({ cell, ...first });
  }
  return found;
}

function textOf(parts: Parts, path: string): string {
  const name = Object.keys(parts).find((part) => part.toLowerCase() === path.toLowerCase());
  return name === undefined ? '' : new TextDecoder().decode(parts[name]);
}

function attribute(tag: string, name: string): string {
  const [, , value = ''] = new RegExp(`(?:^|\\s)${name}=(["'])(.*?)\\1`, 's').exec(tag) ?? [];
  return plainText(value);
}

const SIGNS: Readonly<Record<string, string>> = { lt: '<', gt: '>', amp: '&', quot: '"', apos: "'" };

function plainText(xml: string): string {
  return xml.replace(/&(?:#(\d+)|#x([0-9a-f]+)|(\w+));/gi, (whole, decimal?: string, hex?: string, name?: string) => {
    if (name !== undefined) return SIGNS[name] ?? whole;
    const point = decimal === undefined ? Number.parseInt(hex ?? '', 16) : Number(decimal);
    return point <= 0x10ffff ? String.fromCodePoint(point) : whole;
  });
}
