// Commands that mean the same wherever they are given: undo and redo, files, the way around the page, units, colours. Entries of
// the table.

import { FORMATS } from '../../../engine/index.ts';
import { keptList } from '../dialogs/kept-state.ts';
import { keysPage } from '../dialogs/keys-state.ts';
import { localeDialog } from '../dialogs/locale-state.ts';
import { offerUpgrade } from '../dialogs/upgrade-offer.ts';
import { SMALLER_OFFERS, seasonToPlan, titleOf } from '../files/fresh.ts';
import { openDemo, openFile, openFreshOffer, openFreshSeason } from '../files/open.ts';
import { saveWorkbook, saveWorkbookAs } from '../files/own-file.ts';
import { pickWorkbook } from '../files/pick.ts';
import { newerTemplate } from '../files/read.ts';
import { isTyping } from '../formula-line/draft.ts';
import { ownSheets } from '../own/own-open.ts';
import { toNextRegion } from '../page/regions.ts';
import { type Appearance, appearance } from '../store/appearance.ts';
import { redo, setUnits, undo } from '../store/change.ts';
import { openFind } from '../store/find.ts';
import { view } from '../store/view.ts';
import { steps, units } from '../store/workbook.ts';
import { openWhatIf } from '../what-if/what-if-state.ts';
import type { PageCommand } from './command.ts';
import { withPart } from './fetched.ts';
import type { Situation } from './situation.ts';

/** Where undo is the workbook's: not in a text, which has an undo of its own. */
const OUTSIDE_TEXTS = ['grid', 'field', 'formula line', 'scratch', 'page'] as const;

const OFTEN = [...OUTSIDE_TEXTS, 'text'] as const;

const openKeys = (): void => {
  keysPage.value = true;
};

const notTyping = ({ surface }: Situation): boolean => surface !== 'formula line' || !isTyping();

const COLOURS: readonly (readonly [Appearance, string])[] = [
  ['system', 'Colours as the computer says'],
  ['light', 'Light colours'],
  ['dark', 'Dark colours'],
];

/** A season that is begun or looked at anew is seen as a whole first. */
function showGlance(): void {
  view.value = { at: 'glance' };
}

export const EVERYWHERE: readonly PageCommand[] = [
  {
    id: 'undo',
    label: 'Undo',
    keys: ['Ctrl Z'],
    where: OUTSIDE_TEXTS,
    applies: notTyping,
    refusal: () => (steps().undo === undefined ? 'Nothing to undo.' : undefined),
    run: undo,
  },
  {
    id: 'redo',
    label: 'Redo',
    keys: ['Ctrl Y', 'Ctrl Shift Z'],
    where: OUTSIDE_TEXTS,
    applies: notTyping,
    refusal: () => (steps().redo === undefined ? 'Nothing to redo.' : undefined),
    run: redo,
  },
  { id: 'save', label: 'Save the workbook to a file', keys: ['Ctrl S'], run: () => void saveWorkbook() },
  {
    id: 'save as',
    label: 'Save the workbook to another file',
    menus: { workbook: 0 },
    run: () => void saveWorkbookAs(),
  },
  { id: 'open', label: 'Open a workbook file', run: () => void pickWorkbook(openFile) },
  {
    id: 'go to',
    label: 'Go to a sheet, row or column',
    keys: ['Ctrl K'],
    where: OFTEN,
    run: () => document.getElementById('go-to')?.focus(),
  },
  {
    id: 'find',
    label: 'Find in values',
    keys: ['Ctrl F'],
    where: OFTEN,
    menus: { view: 3 },
    run: () => openFind('find'),
  },
  {
    id: 'replace',
    label: 'Find and replace',
    keys: ['Ctrl H'],
    where: OFTEN,
    menus: { view: 3 },
    run: () => openFind('replace'),
  },
  {
    id: 'keys',
    label: 'All keys',
    keys: ['F1'],
    menus: { workbook: 2 },
    run: openKeys,
  },
  { id: 'keys by ?', label: 'All keys, where no text is typed', keys: ['?'], where: ['page'], run: openKeys },
  { id: 'next region', label: 'To the next part of the page', keys: ['F6'], run: () => toNextRegion(1) },
  { id: 'previous region', label: 'To the part of the page before', keys: ['Shift F6'], run: () => toNextRegion(-1) },
  {
    id: 'us units',
    label: 'Show US customary units',
    refusal: () => (units.value === 'us' ? 'They are shown already.' : undefined),
    run: () => setUnits('us'),
  },
  {
    id: 'si units',
    label: 'Show metric units',
    refusal: () => (units.value === 'si' ? 'They are shown already.' : undefined),
    run: () => setUnits('si'),
  },
  {
    id: 'workbooks',
    label: 'Workbooks in this browser',
    menus: { workbook: 0 },
    run: () => {
      keptList.value = { shows: 'workbooks' };
    },
  },
  {
    id: 'versions',
    label: 'Versions',
    menus: { workbook: 0 },
    run: () => {
      keptList.value = { shows: 'versions' };
    },
  },
  {
    id: 'own sheets',
    label: 'Sheets of your own',
    menus: { workbook: 0 },
    run: ({ place }) => {
      ownSheets.value = { sheet: place.sheet };
    },
  },
  { id: 'what if', label: 'What if', menus: { workbook: 0 }, run: openWhatIf },
  {
    id: 'locale',
    label: 'How figures and days are written',
    menus: { workbook: 2 },
    run: () => {
      localeDialog.value = true;
    },
  },
  {
    id: 'new season',
    label: 'New season',
    says: () => `New season ${seasonToPlan()}`,
    menus: { workbook: 0 },
    run: () => void openFreshSeason(seasonToPlan()).then(showGlance),
  },
  ...SMALLER_OFFERS.map(
    (offer): PageCommand => ({
      id: `new ${offer.name}`,
      label: `New workbook of ${offer.name}`,
      says: () => `New workbook: ${titleOf(offer, seasonToPlan())}`,
      menus: { workbook: 0 },
      run: () => void openFreshOffer(offer, seasonToPlan()),
    }),
  ),
  {
    id: 'demo farm',
    label: 'Demo farm',
    menus: { workbook: 0 },
    run: () => void openDemo().then(showGlance),
  },
  {
    id: 'upgrade sheets',
    label: 'Bring the sheets up to date',
    applies: ({ book }) => book !== undefined && newerTemplate(book) !== undefined,
    menus: { workbook: 1 },
    run: offerUpgrade,
  },
  ...FORMATS.filter(({ holds }) => holds === 'sheets').map(
    (format): PageCommand => ({
      id: `download all ${format.id}`,
      label: `Download all sheets as ${format.name}`,
      menus: { workbook: 1 },
      run: () => withPart(import('../files/download-sheets.ts'), (part) => part.downloadAll(format)),
    }),
  ),
  ...COLOURS.map(
    ([choice, label]): PageCommand => ({
      id: `${choice} colours`,
      label,
      says: () => `${label}${appearance.value === choice ? ' (now)' : ''}`,
      menus: { workbook: 2 },
      run: () => {
        appearance.value = choice;
      },
    }),
  ),
];
