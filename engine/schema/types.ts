// From declared types to the engine's and back. Units follow the workbook's system; a unit that no vocabulary knows has no type.

import { noteUnknownFunction } from '../functions/former-wanted.ts';
import { RECORDS } from '../functions/index.ts';
import type { Vocabulary } from '../units/vocabulary.ts';
import type { ValueType } from '../values/type.ts';
import type { TypeDeclaration, UnitSystem } from './declaration.ts';

/** The type of a declared column; undefined where its unit is not known. `nameOf` gives the names of sheets. */
export function typeOf(
  declared: TypeDeclaration,
  units: UnitSystem,
  vocabulary: Vocabulary,
  nameOf: (sheet: string) => string | undefined,
): ValueType | undefined {
  switch (declared.type) {
    case 'number': {
      const unit = vocabulary.find(declared.unit[units]);
      if (unit === undefined) return undefined;
      // A number in °C is a temperature on its scale; one in Cdeg is a difference of temperatures.
      return unit.offset === 0 ? { kind: 'number', dimension: unit.dimension, unit } : { kind: 'temperature', unit };
    }
    case 'temperature': {
      const unit = vocabulary.find(units === 'us' ? 'degF' : 'degC');
      return unit === undefined ? undefined : { kind: 'temperature', unit };
    }
    case 'choice':
      return { kind: 'choice', options: declared.options };
    case 'link': {
      const called = nameOf(declared.sheet);
      const type = { kind: 'link', table: declared.sheet } as const;
      // An id says nothing to anybody.
      return called === declared.sheet ? type : { ...type, called: called ?? 'a sheet that is not here' };
    }
    case 'record': {
      const record = RECORDS.get(declared.record);
      if (record !== undefined) return { kind: 'record', record };
      noteUnknownFunction();
      return undefined;
    }
    default:
      return { kind: declared.type };
  }
}

/** A type as a column of that type is declared. */
export function declaredType(type: ValueType): TypeDeclaration {
  switch (type.kind) {
    case 'number':
      return { type: 'number', unit: { us: type.unit.symbol, si: type.unit.symbol } };
    case 'choice':
      return { type: 'choice', options: type.options };
    case 'link':
      return { type: 'link', sheet: type.table };
    case 'record':
      return { type: 'record', record: type.record.id };
    default:
      return { type: type.kind };
  }
}

/** Texts, choices and links are kept as whole numbers. */
export function isWhole(type: ValueType | undefined): boolean {
  return type?.kind === 'text' || type?.kind === 'choice' || type?.kind === 'link';
}
