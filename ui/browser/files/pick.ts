// Asks a person for a file of theirs, in the browser's own dialog.

import { FORMATS, type Format } from '../../../engine/index.ts';
import { pickToOpen } from './file-access.ts';

/** Hands on the file that is picked; nothing happens where none is. */
export function pickFile(accept: string, take: (file: File) => void): void {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = accept;
  input.addEventListener('change', () => {
    const file = input.files?.[0];
    if (file !== undefined) take(file);
  });
  input.click();
}

/** Hands on the workbook file that is picked, with the way to write to it again where the browser has one. */
export async function pickWorkbook(take: (file: File, handle?: FileSystemFileHandle) => void): Promise<void> {
  const handle = await pickToOpen();
  if (handle === 'none') pickFile(WORKBOOK_FILES, take);
  else if (handle !== undefined) take(await handle.getFile(), handle);
}

const WORKBOOK_FILES = '.json,application/json';
/** Files from which rows can be read; texts have several endings. */
export const TABLE_FILES = ['.tsv', '.txt', ...FORMATS.flatMap(endingAndType)].join(',');

function endingAndType({ ending, mediaType, readTable }: Format): readonly string[] {
  return readTable === undefined ? [] : [`.${ending}`, mediaType.split(';')[0] ?? ''];
}
