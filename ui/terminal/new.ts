// `new`: a fresh workbook file from a template, or the demo farm.

import { demoFarm } from '../../demo/farm.ts';
import { type Start, sheetViews, type Template, writeWorkbookFile } from '../../engine/index.ts';
import { OFFERS, SEASON, startOf } from '../../sheets-templates/index.ts';
import type { Given } from './arguments.ts';
import { seasonFor } from './season-year.ts';
import { STREAM, startWorkbook, writeOut } from './workbook-files.ts';
import { refuse, type World } from './world.ts';

const DEMO = 'demo';
/** What a template is told; the demo farm has its own. */
const ABOUT_SEASON = ['units', 'currency', 'season'] as const;

export async function makeNew(given: Given, world: World): Promise<number> {
  const { words, values } = given;
  const name = (words[0] ?? 'season').toLowerCase();
  const { template, start } = await startFor(name, given, world);
  const file = values.get('out');
  if (file === undefined) return refuse(`Say which file to write: new ${name} --out season.json.`);
  const workbook = startWorkbook(template, start, world);
  writeOut(file, writeWorkbookFile(workbook.data()), given, world);
  if (file === STREAM) return 0;
  const what = `${sheetViews(workbook).length} tables`;
  world.out(
    given.flags.has('dry-run')
      ? `${file} would hold ${what}. Nothing was written: this was a trial.\n`
      : `Wrote ${file}: ${what}.\n`,
  );
  return 0;
}

async function startFor(
  name: string,
  { values }: Given,
  world: World,
): Promise<{ readonly template: Template; readonly start: Start }> {
  if (name === DEMO) {
    const told = ABOUT_SEASON.find((option) => values.has(option));
    return told === undefined
      ? { template: SEASON, start: demoFarm }
      : refuse(`The demo farm has its own ${told}: leave out --${told}.`);
  }
  const offer = OFFERS.find((one) => one.name === name);
  if (offer === undefined) {
    const names = [...OFFERS.map((one) => one.name), DEMO].join(', ');
    return refuse(`There is no template called “${name}”: choose one of ${names}.`);
  }
  const template = await offer.template();
  const start = startOf(template.sheets, {
    today: world.today,
    begun: world.today,
    season: seasonYear(values.get('season'), world.today),
    units: unitsOf(values.get('units')),
    currency: currencyOf(values.get('currency')),
  });
  return { template, start };
}

function seasonYear(given: string | undefined, today: number): number {
  if (given === undefined) return seasonFor(today);
  if (!/^\d{4}$/.test(given))
    return refuse(`--season takes a year such as ${seasonFor(today)}, and “${given}” is none.`);
  return Number(given);
}

function unitsOf(given: string | undefined): 'us' | 'si' {
  if (given === undefined || given === 'us') return 'us';
  return given === 'si' ? 'si' : refuse(`--units is us or si, and not “${given}”.`);
}

function currencyOf(given: string | undefined): string {
  if (given === undefined) return 'USD';
  const code = given.toUpperCase();
  return /^[A-Z]{3}$/.test(code)
    ? code
    : refuse(`--currency takes a code of three letters such as EUR, not “${given}”.`);
}
