// Hands files to the person.

/** Hands a file's content to the browser to be downloaded under this name. */
export function download(content: string | Uint8Array, name: string, type: string): void {
  const part = typeof content === 'string' ? content : content.slice().buffer;
  const address = URL.createObjectURL(new Blob([part], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/** A title as a file's name: without what file systems don't take. */
export function fileName(title: string): string {
  const plain = title
    .normalize('NFC')
    // biome-ignore lint/suspicious/noControlCharactersInRegex: no file system takes them in a name
    .replace(/[\\/:*?"<>|\u0000-\u001f]+/g, ' ')
    .slice(0, 120)
    .replace(/^[. ]+|[. ]+$/g, '');
  return plain === '' ? 'workbook' : plain;
}
