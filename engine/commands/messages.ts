// What was done, in words: a code with the parts its sentence names. Undo, the list of versions and read-out lines show the
// sentence; transactions keep the code.

import type { Message } from '../document/transaction.ts';

const SENTENCES = {
  'type cell': '{column}: {entry}',
  'clear cell': '{column}: cleared',
  'clear cells': 'Clear {count} cells',
  'fill cell': 'Fill a cell',
  'fill cells': 'Fill {count} cells',
  'paste cell': 'Paste a cell',
  'paste cells': 'Paste {count} cells',
  'replace cell': 'Replace in a cell',
  'replace cells': 'Replace in {count} cells',
  'take back': 'Take {column} back to its formula',
  'take back cells': 'Take {count} cells back',
  'add row': 'Add {row} to {sheet}',
  'add unnamed row': 'Add a row to {sheet}',
  'duplicate row': 'Duplicate {row}',
  'remove row': 'Remove {row} from {sheet}',
  'remove rows': 'Remove {count} rows from {sheet}',
  'move row': 'Move {row} in {sheet}',
  'move rows': 'Move {count} rows of {sheet}',
  'keep row': 'Keep {row}',
  'place bed': 'Place {row} on the map',
  'turn bed': 'Turn {row} on the map',
  'place beds': 'Place the beds on the map',
  'beds by field': 'Lay the beds out by field',
  'set formula': 'Formula of {column}',
  'template formula': "The sheet's own formula of {column}",
  'add column': 'Add the column {column}',
  'remove column': 'Remove the column {column}',
  'rename column': 'Rename {column}',
  'move column': 'Move {column}',
  'add sheet': 'Add the sheet {sheet}',
  'bring sheets': 'Bring in {sheets}',
  'remove sheet': 'Remove the sheet {sheet}',
  'rename sheet': 'Rename {sheet}',
  'move sheet': 'Move {sheet}',
  'set check': 'Check {check}',
  'add view': 'Add the view {view} of {sheet}',
  'change view': 'View {view} of {sheet}',
  'remove view': 'Remove the view {view} of {sheet}',
  'take view back': 'View {view} of {sheet} as it came',
  'bring views back': 'Views of {sheet} that were put away',
  'rename view': 'Rename the view {view}',
  'filter view': 'Filter of {sheet}',
  'sort view': 'Order of {sheet}',
  'group view': 'Groups of {sheet}',
  'set colour': 'Colour: {colour}',
  'remove colour': 'Remove the colour {colour}',
  'set note': 'Note on {column}',
  'remove note': 'Remove the note on {column}',
  'set locale': 'Figures and dates as in {locale}',
  'us units': 'Show US customary units',
  'si units': 'Show metric units',
  'set today': 'Today is {date}',
  'set title': 'Title: {title}',
  import: 'Import into {sheet}',
  'import file': 'Import {file} into {sheet}',
  'move planting': 'Move {planting}',
  'move spacing': '{column} of {row}',
  restore: 'Back to how it stood {when}',
  'lay succession': 'Lay {succession}',
  'lay successions': 'Lay {count} successions',
  'work out order': 'Work out the order',
  'plant a way': 'Plant {way}',
  'choose amounts': 'Choose how much of {count} plantings',
  'propose beds': 'Propose beds for {count} plantings',
  'learn figure': '{of}: take over the learned {figure}',
  'add branch': 'Branch {branch}',
  'rename branch': 'Rename the branch {branch}',
  'remove branch': 'Throw the branch {branch} away',
  'change branch': 'Change in the branch {branch}',
  'take over': 'Take over from the branch {branch}',
  'keep branch': 'Keep the branch {branch}',
  'add paper': 'Add {paper}',
  'rename paper': 'Rename {paper}',
  'remove paper': 'Throw {paper} away',
  'type on paper': '{paper}, {cell}: {entry}',
  'clear on paper': '{paper}: clear {cells}',
  'paste on paper': '{paper}: paste into {cells}',
  'fill on paper': '{paper}: fill {cells}',
  'open on paper': 'Open {file} as scratch paper',
  'sum to column': 'Turn {cell} of {paper} into the column {column}',
  upgrade: 'Sheets brought up to date',
  trial: 'Trial',
} as const;

export type MessageCode = keyof typeof SENTENCES;

/** A message that can be kept and sent. */
export function message(code: MessageCode, parts: Message['parts'] = {}): Message {
  return { code, parts };
}

function isCode(code: string): code is MessageCode {
  return Object.hasOwn(SENTENCES, code);
}

/** The sentence of a message; of one that a newer program wrote, its code. */
export function sayMessage({ code, parts }: Message): string {
  if (!isCode(code)) return code;
  return SENTENCES[code].replace(/\{(\w+)\}/g, (_, part: string) => String(parts[part] ?? ''));
}
