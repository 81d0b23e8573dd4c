// `learned` and `rollover`: what the records taught, taken over one figure at a time, and the season to come made from this one.

import { nearestName, writeWorkbookFile } from '../../engine/index.ts';
import { ALONG, learnedOffers, PLANS, rollOver, takeOver } from '../../sheets-templates/index.ts';
import { carryOut } from './acts.ts';
import type { Given } from './arguments.ts';
import { changeWorkbook, openWorkbook, writeOut } from './workbook-files.ts';
import { onOneLine, refuse, type World } from './world.ts';

/** Lists what may be taken over; with --take takes one figure over. */
export async function showLearned(given: Given, world: World): Promise<number> {
  const [file = ''] = given.words;
  const wanted = given.values.get('take');
  if (wanted !== undefined) {
    return changeWorkbook(file, given, world, (workbook) => {
      const offers = learnedOffers(workbook);
      const offer = offers.find(({ name }) => name.toLowerCase() === wanted.toLowerCase());
      if (offer === undefined) {
        const near = nearestName(
          wanted,
          offers.map(({ name }) => name),
        );
        return refuse(
          onOneLine(
            `${file}: nothing called “${wanted}” is to be taken over${near === undefined ? '; without --take all that may be is listed' : `: did you mean “${near}”?`}`,
          ),
        );
      }
      const act = takeOver(workbook, offer.sheet, offer.row, offer.column);
      return { says: `${onOneLine(carryOut(workbook, act, file))}\n` };
    });
  }
  const offers = learnedOffers(await openWorkbook(file, world));
  world.out(
    offers.length === 0
      ? 'Nothing new was learned: note in Records what comes up, stands and is picked.\n'
      : `${offers.map(({ name, says }) => onOneLine(`${name}: ${says}`)).join('\n')}\n`,
  );
  return 0;
}

/** Writes the workbook of the next season beside this one, which stays as it is. */
export async function rollSeasonOver(given: Given, world: World): Promise<number> {
  const [file = ''] = given.words;
  const out = given.values.get('out') ?? refuse('Name the new file with --out FILE; the old one stays as it is.');
  if (out === file) refuse(`--out names ${file} itself, and last year should stay readable: name another file.`);
  const plan = planAsked(given.values.get('plan'));
  const season = seasonAsked(given.values.get('season'));
  const rolled = rollOver(await openWorkbook(file, world), {
    season,
    plan,
    along: alongAsked(given.values.get('along')),
  });
  if (!rolled.ok) return refuse(onOneLine(`${file}: ${rolled.why}`));
  writeOut(out, writeWorkbookFile(rolled.data), given, world);
  const told = `${onOneLine(rolled.said)}\n`;
  if (out === '-') world.warn(told.trimEnd());
  else world.out(given.flags.has('dry-run') ? `${told}Nothing was written: this was a trial.\n` : told);
  return 0;
}

function planAsked(given: string | undefined): (typeof PLANS)[number] {
  return given === undefined
    ? 'own'
    : (PLANS.find((plan) => plan === given) ??
        refuse(`--plan takes ${PLANS.join(', ')}: own copies the plantings typed by hand, not “${given}”.`));
}

function alongAsked(given: string | undefined): (typeof ALONG)[number][] {
  return (given ?? '')
    .split(',')
    .map((part) => part.trim())
    .filter((part) => part !== '')
    .map(
      (part) =>
        ALONG.find((one) => one === part) ??
        refuse(
          `--along takes ${ALONG.join(', ')}, or several with commas between: what comes along with the plantings, not “${part}”.`,
        ),
    );
}

function seasonAsked(given: string | undefined): number {
  if (given === undefined) return refuse('Say which season is to come with --season YEAR, such as 2028.');
  return /^\d{4}$/.test(given) ? Number(given) : refuse(`--season takes a year such as 2028, not “${given}”.`);
}
