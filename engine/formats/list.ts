// The formats there are, in the order in which people are offered them. Adding one is a file beside this one and a line here.

import { CSV } from './csv-format.ts';
import type { Format } from './format.ts';
import { WORKBOOK } from './workbook-format.ts';
import { XLSX } from './xlsx-format.ts';

export const FORMATS: readonly Format[] = [WORKBOOK, CSV, XLSX];

/** The format that a file's name tells by its ending; undefined where it tells none. */
export function formatOfName(name: string): Format | undefined {
  const lower = name.toLowerCase();
  return FORMATS.find(({ ending }) => lower.endsWith(`.${ending}`));
}

export function formatOfId(id: string): Format | undefined {
  return FORMATS.find((format) => format.id === id);
}
