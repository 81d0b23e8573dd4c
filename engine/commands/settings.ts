// Units, today, title, and the version of the template.

import { templateOf } from '../document/schema-operations.ts';
import { civilDayOfIso, isoDate } from '../values/civil.ts';
import type { CommandOf } from './command.ts';
import type { Draft } from './draft.ts';
import type { Refused } from './refusal.ts';

export function setUnits({ units }: CommandOf<'set units'>, draft: Draft): Refused {
  if (units !== draft.document.program.units) draft.perform({ op: 'units', units });
  return undefined;
}

export function setToday({ today }: CommandOf<'set today'>, draft: Draft): Refused {
  // A file writes a year in four digits.
  if (!Number.isInteger(today) || civilDayOfIso(isoDate(today)) !== today)
    return { why: 'Today must be a whole day, such as 15 Mar 2027.' };
  if (today !== draft.document.frame.today) draft.perform({ op: 'today', today });
  return undefined;
}

export function setTitle({ title }: CommandOf<'set title'>, draft: Draft): Refused {
  const wanted = title.trim();
  if (wanted === '') return { why: 'A workbook needs a title: write one.' };
  if (wanted !== draft.document.title) draft.perform({ op: 'title', title: wanted });
  return undefined;
}

export function useTemplate({ version }: CommandOf<'use template'>, draft: Draft): Refused {
  const { template } = draft.document;
  if (version === template.version) return undefined;
  if (templateOf(template.name, version, draft.templates) === undefined) {
    return {
      why: `Version ${version} of this workbook's sheets is not on record here: update Dibble, then try again.`,
    };
  }
  draft.perform({ op: 'template', version, rows: 'follow' });
  return undefined;
}
