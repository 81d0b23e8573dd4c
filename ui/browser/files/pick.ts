// Asks a person for a file of theirs, in the browser's own dialog.

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

export const WORKBOOK_FILES = '.json,application/json';
export const TABLE_FILES = '.csv,.tsv,.txt,text/csv';
