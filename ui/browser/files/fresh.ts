// Workbooks that start here: a fresh season, empty of a farm's own rows, and the demo farm as it comes.

import { newDocument, type Start, type Workbook, yearMonthDay } from '../../../engine/index.ts';
import { SEASON, seasonStart } from '../../../sheets-templates/index.ts';
import { openData } from './read.ts';
import { newId, today } from './world.ts';

/** Which season a fresh workbook plans: this year's; from autumn on, next year's. */
export function seasonToPlan(): number {
  const { year, month } = yearMonthDay(today());
  return month >= 9 ? year + 1 : year;
}

export function freshSeason(season: number): Promise<Workbook> {
  return started(seasonStart({ title: `Season ${season}`, season, today: today() }));
}

export async function freshDemo(): Promise<Workbook> {
  const { demoFarm } = await import('../../../demo/farm.ts');
  return started(demoFarm);
}

async function started(start: Start): Promise<Workbook> {
  const made = newDocument(SEASON, start, newId);
  if (!made.ok) throw new Error(made.problems.join(' '));
  const workbook = await openData(made.data);
  if (workbook === undefined) throw new Error('The season template is not on the shelf.');
  return workbook;
}
