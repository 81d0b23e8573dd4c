// Joining values into one text, each as & joins it (values/plain-text.ts): numbers in full, quantities with their unit, dates as
// 15 Mar 2027, blanks as nothing. Read by standard/index.ts.

import type { ArgumentType } from '../../language/signature.ts';
import { isError, type Scalar } from '../../values/error.ts';
import { LONGEST_TEXT, plainText, tooLongText } from '../../values/plain-text.ts';
import { TEXT, type ValueType } from '../../values/type.ts';
import { alias, anything, makers, many, needed, rule, takes, text, thenRepeating, values, yesno } from '../build.ts';
import type { FunctionDefinition, RunBody } from '../definition.ts';
import { type Given, listOf } from './columns.ts';

const make = makers('text');

const TOO_LONG = tooLongText('join less');

/** Why a type can't be joined as it is; undefined where it can. */
function objection(type: ValueType): string | undefined {
  if (type.kind === 'link') {
    return `This is a row of ${type.called ?? type.table}: join a text, such as "" & the link, which gives its name.`;
  }
  if (type.kind !== 'number' || type.dimension.money === 0) return undefined;
  return 'Money is joined with &, which knows the currency, or written by TEXT(...; "0.00").';
}

function joinable(skip: number): (args: readonly ArgumentType[]) => ValueType | string {
  return (args) => {
    for (const { type } of args.slice(skip)) {
      const why = type === undefined ? undefined : objection(type);
      if (why !== undefined) return why;
    }
    return TEXT;
  };
}

/** A value as & joins it. No money comes here, so that no currency is asked for. */
function joined(value: Scalar, type: ValueType | undefined): string {
  if (type === undefined) return typeof value === 'string' ? value : '';
  return plainText(value, type, 'XXX');
}

/** All values from the `skip`-th argument on, joined with a separator; blanks and empty texts left out where asked. */
function join(args: Given, types: readonly ArgumentType[], skip: number, separator: string, leaveOut: boolean): Scalar {
  const parts: string[] = [];
  let length = 0;
  for (let index = skip; index < args.length; index += 1) {
    for (const entry of listOf(args[index] ?? '')) {
      if (isError(entry)) return entry;
      const part = joined(entry, types[index]?.type);
      if (part === '' && leaveOut) continue;
      length += part.length + (parts.length === 0 ? 0 : separator.length);
      if (length > LONGEST_TEXT) return TOO_LONG;
      parts.push(part);
    }
  }
  return parts.join(separator);
}

function chooseConcat(types: readonly ArgumentType[]): RunBody {
  return { lane: 'columns', compute: (args) => join(args, types, 0, '', true) };
}

function chooseTextJoin(types: readonly ArgumentType[]): RunBody {
  return {
    lane: 'columns',
    compute: (args) => {
      const [separator = null, leaveOut = null] = args;
      const between = listOf(separator)[0] ?? '';
      if (isError(between)) return between;
      const leave = listOf(leaveOut)[0] ?? true;
      if (isError(leave)) return leave;
      return join(args, types, 2, typeof between === 'string' ? between : '', leave === true);
    },
  };
}

const CONCAT = make.other(
  'CONCAT',
  'All values joined: CONCAT("Bed "; [Bed]; ", row "; [Row]).',
  '6.20.6',
  many('values', values(anything)),
  rule(joinable(0)),
  { lane: 'by type', choose: chooseConcat },
);

export const JOINING: readonly FunctionDefinition[] = [
  CONCAT,
  alias('CONCATENATE', CONCAT),
  make.other(
    'TEXTJOIN',
    'All values joined with a separator; blanks are left out where the second is yes: TEXTJOIN(", "; TRUE; Crops[Crop]).',
    'common spreadsheet practice',
    thenRepeating(
      takes(needed('separator', text), needed('leave_out_blanks', yesno)),
      needed('values', values(anything)),
    ),
    rule(joinable(2)),
    { lane: 'by type', choose: chooseTextJoin },
  ),
];
