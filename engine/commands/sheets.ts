// Sheets of a person's own, names and places of sheets, checks.

import { storedFormula } from '../language/stored.ts';
import { checkText } from '../schema/check.ts';
import type { ProgramSheet } from '../schema/compile.ts';
import type { SheetDeclaration } from '../schema/declaration.ts';
import { checkDeclaration } from '../schema/declaration-shape.ts';
import { isTaken } from '../schema/distinct-names.ts';
import type { After } from '../schema/own.ts';
import { rehung } from '../schema/places.ts';
import { entry } from '../schema/records.ts';
import type { Schema } from '../schema/schema.ts';
import { TEXT } from '../values/type.ts';
import { refuseUnkept } from './as-kept.ts';
import type { CommandOf } from './command.ts';
import { type Draft, findSheet } from './draft.ts';
import type { Refused } from './refusal.ts';

const OWN_SHEETS = 'Own sheets';

export function addSheet({ name, about, rows }: CommandOf<'add sheet'>, draft: Draft): Refused {
  const why = refuseSheetName(name, undefined, draft);
  if (why !== undefined) return { sheet: name, why };
  const id = draft.newId();
  const key = draft.newId();
  const entered = rows.from === 'entry';
  const declaration: SheetDeclaration = {
    id,
    name,
    question: OWN_SHEETS,
    about,
    rows,
    ...(entered ? { key } : {}),
    columns: entered
      ? [
          {
            id: key,
            name: 'Name',
            type: { type: 'text' },
            group: '',
            note: '',
            role: 'entered',
            formula: '',
            required: true,
          },
        ]
      : [],
    checks: [],
    cautions: [],
  };
  addLast(declaration, draft);
  return undefined;
}

function addLast(sheet: SheetDeclaration, draft: Draft): void {
  const last = draft.schema().sheets.at(-1)?.id;
  draft.perform({ op: 'add sheet', sheet, ...(last === undefined ? {} : { after: last }) });
}

export function putSheet({ sheet }: CommandOf<'put sheet'>, draft: Draft): Refused {
  const why = refuseSheetName(sheet.name, undefined, draft);
  if (why !== undefined) return { sheet: sheet.name, why };
  if (draft.schema().nameOf(sheet.id) !== undefined)
    return {
      sheet: sheet.name,
      why: `${sheet.name} has the id of a sheet that is here already: bring it in under a new one.`,
    };
  addLast(sheet, draft);
  return undefined;
}

function refuseSheetName(name: string, own: string | undefined, draft: Draft): string | undefined {
  if (name.trim() === '' || name !== name.trim()) return 'A sheet needs a name without blanks at its ends.';
  if (/[[\]'#\r\n]/.test(name)) return `“${name}” can't be a sheet's name: use one line without [ ] ' #.`;
  return refuseTaken(name, own, draft.schema());
}

function refuseTaken(name: string, own: string | undefined, { sheets }: Schema): string | undefined {
  return isTaken(name, sheets, own) ? `There is already a sheet called ${name}: choose another name.` : undefined;
}

export function removeSheet({ sheet }: CommandOf<'remove sheet'>, draft: Draft): Refused {
  const found = findSheet(draft, sheet);
  if (!found.ok) return found.refused;
  const { name, schema } = found.found;
  if (!schema.own) return { sheet, why: `${name} belongs to the template; only sheets you added can be removed.` };
  const user = draft.document.program.sheets.find(({ id, columns }) =>
    columns.some(
      ({ type, role }) => id !== sheet && role === 'entered' && type?.kind === 'link' && type.table === sheet,
    ),
  );
  if (user !== undefined) return { sheet, why: `${user.name} still links to rows of ${name}: change that first.` };
  hangElsewhere(sheet, undefined, draft);
  draft.perform({ op: 'remove sheet', sheet });
  return undefined;
}

export function renameSheet({ sheet, name }: CommandOf<'rename sheet'>, draft: Draft): Refused {
  const found = findSheet(draft, sheet);
  if (!found.ok) return found.refused;
  const { template } = draft.document;
  const given = name === '' ? template.sheets.find(({ id }) => id === sheet)?.name : undefined;
  const why = given === undefined ? refuseSheetName(name, sheet, draft) : refuseTaken(given, sheet, draft.schema());
  if (why !== undefined) return { sheet, why };
  draft.perform({ op: 'rename sheet', sheet, name: given === undefined ? name : null });
  return undefined;
}

export function moveSheet({ sheet, after }: CommandOf<'move sheet'>, draft: Draft): Refused {
  const found = findSheet(draft, sheet);
  if (!found.ok) return found.refused;
  if (after !== sheet) hangElsewhere(sheet, after, draft);
  return undefined;
}

/** Moves a sheet, or takes it out where `to` is undefined, from among the others, which stay in their order. */
function hangElsewhere(moved: string, to: After | undefined, draft: Draft): void {
  const { own, sheets } = draft.document.program.schema;
  const places = sheets.map(({ id }) => ({ id, after: entry(own, id)?.after }));
  for (const [sheet, after] of rehung(places, moved, to)) draft.perform({ op: 'move sheet', sheet, after });
}

export function setCheck({ sheet, check }: CommandOf<'set check'>, draft: Draft): Refused {
  const found = findSheet(draft, sheet);
  if (!found.ok) return found.refused;
  if (found.found.column(check.column) === undefined) {
    return { sheet, why: `A check stands at a column, and ${found.found.name} has none called ${check.column}.` };
  }
  const why = refuseUnkept(checkDeclaration, check);
  if (why !== undefined) return { sheet, why };
  const says = keptCheck(check.says, found.found, draft);
  draft.perform({ op: 'check', sheet, check: check.id, declaration: { ...check, says } });
  return undefined;
}

function keptCheck(says: string, sheet: ProgramSheet, { document }: Draft): string {
  const { catalog, vocabulary } = document.program;
  return storedFormula(says, checkText(says, { table: sheet.id, wanted: TEXT }, catalog, vocabulary).found);
}

export function removeCheck({ sheet, check }: CommandOf<'remove check'>, draft: Draft): Refused {
  const found = findSheet(draft, sheet);
  if (!found.ok) return found.refused;
  const { template, program } = draft.document;
  const builtIn = template.sheets.find(({ id }) => id === sheet)?.checks.some(({ id }) => id === check) === true;
  const own = entry(entry(program.schema.own, sheet)?.checks, check);
  if (!builtIn && own === undefined) return { sheet, why: `${found.found.name} has no such check any more.` };
  if (builtIn) draft.perform({ op: 'check', sheet, check, declaration: null });
  else draft.perform({ op: 'check', sheet, check });
  return undefined;
}
