// Workbooks that come on screen from elsewhere: a file that a person picks or drops, a fresh season, the demo farm. Each stands
// beside those that are kept here and replaces none. What can't be opened is said and leaves everything as it is.

import { settings, type Workbook } from '../../../engine/index.ts';
import type { Offer } from '../../../sheets-templates/index.ts';
import { DEMO, writeAddress } from '../keeping/address.ts';
import { showFresh } from '../keeping/showing.ts';
import { switchTo } from '../keeping/switching.ts';
import { tell } from '../store/notices.ts';
import { part } from '../store/part.ts';
import { freshDemo, freshOffer, freshSeason } from './fresh.ts';
import { openedWords } from './opened-words.ts';

const filePart = part(() => import('./open-file.ts'));

/** Opens a file of a person's own; what reads files is fetched with the first. */
export async function openFile(file: File, handle?: FileSystemFileHandle): Promise<void> {
  const opening = await filePart().catch(() => undefined);
  if (opening === undefined) tell(`What reads files could not be fetched: open ${file.name} again.`, 'refusal');
  else await opening.openPicked(file, handle);
}

/** The demo farm as it comes. */
export async function openDemo(): Promise<void> {
  await openFresh(await freshDemo(), DEMO);
}

/** A fresh season, empty of the farm's own rows. */
export async function openFreshSeason(season: number): Promise<void> {
  await openFresh(await freshSeason(season));
}

/** A fresh workbook of another template than the whole season. */
export async function openFreshOffer(offer: Offer, season: number): Promise<void> {
  await openFresh(await freshOffer(offer, season));
}

function openFresh(workbook: Workbook, name?: string): Promise<void> {
  return switchTo(async () => {
    showFresh(workbook);
    writeAddress(name);
    return openedWords(settings(workbook).title, []);
  });
}
