// The formulas in an XLSX file's parts, by sheet and place, with faults that stand in cells and names given to cells, all of which
// readers of figures leave out (ECMA-376 part 1, 18.3.1.40, 18.18.11, 18.2.5). Formulas
// that share a text are told with the place of the first, for whoever moves them.

import type { Parts } from './unpack.ts';

export interface FoundFault {
  /** 'B12'. */
  readonly cell: string;
  /** '#N/A'. */
  readonly fault: string;
}

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

/** Cells that hold a fault and no formula, by the sheet's name. */
export function faultsIn(parts: Parts): ReadonlyMap<string, readonly FoundFault[]> {
  return new Map([...sheetPaths(parts)].map(([name, path]) => [name, faultsOf(textOf(parts, path))]));
}

function faultsOf(sheet: string): readonly FoundFault[] {
  return cellsOf(sheet).flatMap(({ open, inside }) => {
    const [, fault = ''] = /<(?:\w+:)?v>([^<]*)</.exec(inside) ?? [];
    const isFault = attribute(open, 't') === 'e' && fault !== '' && !/<(?:\w+:)?f\b/.test(inside);
    return isFault ? [{ cell: attribute(open, 'r'), fault: plainText(fault) }] : [];
  });
}

/** Names given to cells, but those by which programs mark what they print and filter; what they stand for is without its =. */
export function namesIn(
  parts: Parts,
): readonly { readonly name: string; readonly sheet: string | undefined; readonly stands: string }[] {
  const sheets = [...sheetPaths(parts).keys()];
  const defined = /<(?:\w+:)?definedName\b([^>]*)>([^<]*)</g;
  return [...textOf(parts, 'xl/workbook.xml').matchAll(defined)].flatMap(([, open = '', stands = '']) => {
    const name = attribute(open, 'name');
    const place = attribute(open, 'localSheetId');
    if (name === '' || name.startsWith('_xlnm.')) return [];
    return [
      { name, sheet: place === '' ? undefined : sheets[Number(place)], stands: withoutPrefixes(plainText(stands)) },
    ];
  });
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
  for (const { open, inside } of cellsOf(sheet)) {
    const cell = attribute(open, 'r');
    const [, told = '', , text = ''] = /<(?:\w+:)?f\b([^>]*?)(\/>|>(.*?)<\/(?:\w+:)?f>)/s.exec(inside) ?? [];
    if (cell === '' || !/<(?:\w+:)?f\b/.test(inside)) continue;
    const formula = withoutPrefixes(plainText(text));
    const group = attribute(told, 't') === 'shared' ? attribute(told, 'si') : '';
    if (group !== '' && formula !== '') shared.set(group, { formula, from: cell });
    const first = formula === '' ? shared.get(group) : { formula, from: cell };
    if (first !== undefined) found.push({ cell, ...first });
  }
  return found;
}

function cellsOf(sheet: string): readonly { readonly open: string; readonly inside: string }[] {
  const cells = sheet.matchAll(/<(?:\w+:)?c\b([^>]*[^/>])>(.*?)<\/(?:\w+:)?c>/gs);
  return Array.from(cells, ([, open = '', inside = '']) => ({ open, inside }));
}

/** Before the names of functions and of what LET names, which newer programs write for older ones. */
function withoutPrefixes(formula: string): string {
  return formula.replace(/_xl(?:fn|ws|pm)\./g, '');
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
