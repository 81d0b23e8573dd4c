// `upgrade`: what the sheets of today's Dibble would change in a workbook made from those of an earlier one, and taking them.

import { message, type NameChange, settings, type Upgrade, upgradeTo, type Workbook } from '../../engine/index.ts';
import type { Given } from './arguments.ts';
import { changeWorkbook, openWorkbook } from './workbook-files.ts';
import { onOneLine, refuse, type World } from './world.ts';

export async function upgradeSheets(given: Given, world: World): Promise<number> {
  const [file = ''] = given.words;
  if (!given.flags.has('take')) {
    const upgrade = await upgradeOf(await openWorkbook(file, world), world);
    world.out(upgrade === undefined ? UP_TO_DATE : `${inWords(upgrade)}Nothing was changed; --take takes it.\n`);
    return 0;
  }
  return changeWorkbook(file, given, world, async (workbook) => {
    const upgrade = await upgradeOf(workbook, world);
    if (upgrade === undefined) return { says: UP_TO_DATE };
    const { version } = upgrade;
    const done = workbook.do([{ command: 'use template', version }], message('upgrade'), { source: 'upgrade' });
    if (done.refused) return refuse(onOneLine(`${file}: ${done.why}`));
    return { says: `${inWords(upgrade)}${UP_TO_DATE}` };
  });
}

const UP_TO_DATE = 'The sheets are up to date.\n';

async function upgradeOf(workbook: Workbook, world: World): Promise<Upgrade | undefined> {
  const { name, version } = settings(workbook).template;
  const latest = (await world.templates(undefined)).today(name)?.version;
  return latest === undefined || latest <= version ? undefined : upgradeTo(workbook, latest);
}

interface Place {
  readonly sheetName: string;
  readonly columnName: string;
}

function placeOf({ sheetName, columnName }: Place): string {
  return columnName === '' ? sheetName : `${sheetName} / ${columnName}`;
}

function placeBefore({ sheetName, columnName, before }: NameChange): string {
  return placeOf(columnName === '' ? { sheetName: before, columnName } : { sheetName, columnName: before });
}

/** A line for everything that changes, the figures that move first. */
function inWords({ moved, formulas, own, named, added, gone, rowsAdded, rowsGone }: Upgrade): string {
  const lines = [
    ...moved.map((one) => {
      const { count, example } = one;
      const rows = count === 1 ? '1 row' : `${count} rows`;
      const row = example.rowName === '' ? '' : `${example.rowName} `;
      return `moves: ${placeOf(one)}: ${rows}, ${row}from ${example.before} to ${example.after}`;
    }),
    ...formulas.map((one) => `formula: ${placeOf(one)}: ${one.before} becomes ${one.after}`),
    ...own.map((one) => `yours stays: ${placeOf(one)}: ${one.own}; the sheet's own becomes ${one.after}`),
    ...named.map((one) => `yours is called otherwise: ${placeBefore(one)} becomes ${one.after}; formulas follow`),
    ...added.map((one) => `new: ${placeOf(one)}`),
    ...gone.map((one) => `goes: ${placeOf(one)}; what was typed there is kept aside`),
    ...rowsAdded.map((one) => `new rows: ${one.sheetName}: ${one.names.join(', ')}`),
    ...rowsGone.map((one) => `rows go: ${one.sheetName}: ${one.names.join(', ')}; nothing was changed of them`),
  ];
  if (lines.length === 0) return 'No figure moves, and no formula changes.\n';
  return lines.map((line) => `${onOneLine(line)}\n`).join('');
}
