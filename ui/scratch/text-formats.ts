// TEXT on a scratch paper, where a number does not say whether it is a day, a time or a plain number: its format says so. The engine
// writes it, by the same body as in the sheets. Called by engine-functions.ts.

import {
  type ArgumentType,
  createVocabulary,
  FUNCTIONS,
  ONE,
  type Scalar,
  TIME,
  type ValueType,
} from '../../engine/index.ts';
import { PLAIN } from './call-measures.ts';
import { civilOf } from './figures.ts';

const TEXT: ValueType = { kind: 'text' };
const DATE: ValueType = { kind: 'date' };
const DAY = createVocabulary({ currency: 'XXX' }).find('day') ?? ONE;
const SPAN: ValueType = { kind: 'number', dimension: TIME, unit: DAY };

/** A format with the day first and the time after it, parted by a space, a comma or a T. */
const DAY_AND_TIME = /^([^hs[]*[dy][^hs[]*?)([\s,T]+\[?[hs].*)$/i;
const NOON = /am\/pm/i;

/**
 * A number written after a format: "0.0%", "#,##0.00", "d mmm yyyy", "h:mm AM/PM", "yyyy-mm-dd h:mm". A text stays as it is, a
 * blank is 0, and a format that can't be read is a fault that says why.
 */
export function writtenAs(value: Scalar, given: string): Scalar {
  if (typeof value === 'string' || (typeof value === 'object' && value !== null)) return value;
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  const number = value ?? 0;
  if (given === '') return '';
  if (/^(?:general|@)$/i.test(given)) return String(number);
  const format = withoutLooks(given);
  const [, day, time] = DAY_AND_TIME.exec(format) ?? [];
  if (day !== undefined && time !== undefined) {
    const [date, clock] = [byEngine(civilOf(number), DATE, day), writtenTime(number, time)];
    return typeof date === 'string' && typeof clock === 'string' ? date + clock : clock;
  }
  const bare = format.replace(/"[^"]*"|\\.|E[+-]0+/gi, '');
  if (/[hs]|\[m/i.test(bare)) return writtenTime(number, format);
  return /[ymd]/i.test(bare) ? byEngine(civilOf(number), DATE, format) : byEngine(number, PLAIN, format);
}

/** Without colours and languages, which a text has none of, and without room that is held for brackets. */
function withoutLooks(format: string): string {
  return format
    .replace(/\[\$([^\]-]*)(?:-[^\]]*)?\]/g, (_, sign: string) => (sign === '' ? '' : `"${sign}"`))
    .replace(/\[(?:black|blue|cyan|green|magenta|red|white|yellow|color ?\d+)\]/gi, '')
    .replace(/_./g, ' ')
    .replace(/\*./g, '');
}

function writtenTime(number: number, format: string): Scalar {
  if (!NOON.test(format)) return byEngine(number, SPAN, format);
  const ofDay = number - Math.floor(number);
  const isMorning = ofDay < 0.5;
  const onDial = isMorning ? ofDay : ofDay - 0.5;
  // The hour after midnight and after noon is the twelfth.
  return byEngine(onDial < 1 / 24 ? onDial + 0.5 : onDial, SPAN, format.replace(NOON, isMorning ? '"AM"' : '"PM"'));
}

function byEngine(value: number, type: ValueType, format: string): Scalar {
  const definition = FUNCTIONS.get('TEXT');
  const types: readonly ArgumentType[] = [
    { type, constant: undefined },
    { type: TEXT, constant: format },
  ];
  const { result } = definition?.signature ?? {};
  const refused = result?.is === 'rule' ? result.rule(types) : undefined;
  if (typeof refused === 'string') return { error: 'value', why: refused };
  const body = definition?.body.lane === 'by type' ? definition.body.choose(types) : undefined;
  const written = body?.lane === 'scalar' ? body.compute([value, format]) : null;
  return typeof written === 'object' && written !== null && !('error' in written) ? null : written;
}
