// Every printed date of the calendars beside the one the workbook tells, its error in days and, where it is off, why: printed by
// `npm run checks` under the facts.

import { CALENDARS_OFF, cutName, shortDate, toldName } from './calendars.checks.ts';
import { autumn, type Cut, earliest, harvests, latest, type Told } from './calendars.ts';

function because(name: string): string {
  const off = CALENDARS_OFF.get(name);
  return off === undefined ? '' : ` | ${off.why}`;
}

function ofTold(row: Told): string {
  const days = Number.isNaN(row.late) ? 'no date' : `${row.late > 0 ? '+' : ''}${Math.round(row.late)} d`;
  const printed = `${shortDate(row.published)}${row.grain === 'month' ? ' (month)' : ''}`;
  return `${row.place} | ${row.kind} | ${row.crop}, ${row.start} | ${printed} | ${shortDate(row.computed)} | ${days}${because(toldName(row))}`;
}

function ofCut(cut: Cut): string {
  const days = Number.isNaN(cut.outside) ? 'no harvest' : `${Math.round(cut.outside)} d outside`;
  return `${cut.place} | harvest | ${cut.crop}, ${cut.start}, in the bed ${shortDate(cut.plantedOut)} | ${shortDate(cut.from)} to ${shortDate(cut.to)} | ${shortDate(cut.harvest)} | ${days}${because(cutName(cut))}`;
}

/** A heading and a line for each row. */
export function calendarLines(): readonly string[] {
  return [
    'Place | what | crop | printed | told | error',
    ...[...earliest(), ...autumn(), ...latest()].map(ofTold),
    ...harvests().map(ofCut),
  ];
}
