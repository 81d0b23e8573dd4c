// Workbooks that start here: a fresh season, or another template, empty of a farm's own rows, and the demo farm as it comes.

import { newDocument, type Start, type Template, type Workbook, yearMonthDay } from '../../../engine/index.ts';
import {
  OFFERS,
  type Offer,
  SEASON,
  type SeasonOptions,
  seasonStart,
  startOf,
} from '../../../sheets-templates/index.ts';
import { browserLocale } from '../store/writing.ts';
import { openData } from './read.ts';
import { fetchTemplate, newId, today } from './world.ts';

/** Which season a fresh workbook plans: this year's; from autumn on, next year's. */
export function seasonToPlan(): number {
  const { year, month } = yearMonthDay(today());
  return month >= 9 ? year + 1 : year;
}

/** Where inches and pounds are usual (common practice). */
const CUSTOMARY = ['US', 'LR', 'MM'];

/** The measures that are usual where the browser's language is spoken: metric, but for a few countries. */
export function unitsHere(locale = browserLocale()): 'us' | 'si' {
  return CUSTOMARY.includes(new Intl.Locale(locale).maximize().region ?? '') ? 'us' : 'si';
}

export function freshSeason(season: number): Promise<Workbook> {
  return started(SEASON, seasonStart({ title: `Season ${season}`, ...begun(season) }));
}

/** The templates beside the whole season. */
export const SMALLER_OFFERS: readonly Offer[] = OFFERS.filter(({ name }) => name !== SEASON.name);

/** 'Onions 2027' */
export function titleOf({ name }: Offer, season: number): string {
  return `${name.charAt(0).toUpperCase()}${name.slice(1)} ${season}`;
}

export async function freshOffer(offer: Offer, season: number): Promise<Workbook> {
  const template = await offer.template();
  await fetchTemplate(template);
  return started(template, startOf(template.sheets, { title: titleOf(offer, season), ...begun(season) }));
}

function begun(season: number): SeasonOptions {
  const day = today();
  return { season, today: day, begun: day, units: unitsHere() };
}

export async function freshDemo(): Promise<Workbook> {
  const { demoFarm } = await import('../../../demo/farm.ts');
  return started(SEASON, demoFarm);
}

async function started(template: Template, start: Start): Promise<Workbook> {
  const made = newDocument(template, start, newId);
  if (!made.ok) throw new Error(made.problems.join(' '));
  const workbook = await openData(made.data);
  if (workbook === undefined) throw new Error('The season template is not on the shelf.');
  return workbook;
}
