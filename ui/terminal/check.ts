// `check`: what in a workbook needs attention, errors first.

import { type Finding, Findings, sheetView } from '../../engine/index.ts';
import type { Given } from './arguments.ts';
import { placeInWords } from './places.ts';
import { during } from './progress.ts';
import { openWorkbook } from './workbook-files.ts';
import { onOneLine, type World } from './world.ts';

/** The exit status: 1 where one of the findings is an error. */
export async function checkWorkbook({ words: [file = ''] }: Given, world: World): Promise<number> {
  const workbook = await openWorkbook(file, world);
  const found = await during(world, 'Checking ...', () => new Findings(workbook).all());
  for (const { level, sheet, rowName, columnName, says } of found) {
    world.out(`${onOneLine(`${level}: ${placeInWords(sheetView(workbook, sheet), rowName, columnName)}: ${says}`)}\n`);
  }
  world.out(`${found.length === 0 ? 'Nothing needs attention' : countsOf(found)}.\n`);
  return found.some(({ level }) => level === 'error') ? 1 : 0;
}

function countsOf(found: readonly Finding[]): string {
  const levels = ['error', 'warning', 'note'] as const;
  return levels
    .flatMap((level) => {
      const count = found.filter((one) => one.level === level).length;
      return count === 0 ? [] : [`${count} ${level}${count === 1 ? '' : 's'}`];
    })
    .join(', ');
}
