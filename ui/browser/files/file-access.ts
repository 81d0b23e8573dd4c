// Files of a person's own to which the browser lets the page write again, where it can: picked once, remembered with the
// workbook. Elsewhere files are downloaded and uploaded. own-file.ts and pick.ts call it.

interface Kind {
  readonly description: string;
  readonly accept: Readonly<Record<string, readonly string[]>>;
}

declare global {
  // What the type library of the language does not list, since not every browser has it.
  interface Window {
    showOpenFilePicker?: (options: { readonly types: readonly Kind[] }) => Promise<readonly FileSystemFileHandle[]>;
    showSaveFilePicker?: (options: {
      readonly suggestedName: string;
      readonly types: readonly Kind[];
    }) => Promise<FileSystemFileHandle>;
  }
  interface FileSystemHandle {
    requestPermission?: (options: { readonly mode: 'readwrite' }) => Promise<PermissionState>;
  }
}

const WORKBOOKS: Kind = { description: 'Dibble workbook', accept: { 'application/json': ['.json'] } };

/** A file to write to, as the person picks it; undefined where none was picked, 'none' where the browser can't ask. */
export async function pickToSave(suggestedName: string): Promise<FileSystemFileHandle | undefined | 'none'> {
  if (window.showSaveFilePicker === undefined) return 'none';
  return window.showSaveFilePicker({ suggestedName, types: [WORKBOOKS] }).catch(unpicked);
}

/** A workbook file to open, as the person picks it; undefined where none was picked, 'none' where the browser can't ask. */
export async function pickToOpen(): Promise<FileSystemFileHandle | undefined | 'none'> {
  if (window.showOpenFilePicker === undefined) return 'none';
  return window.showOpenFilePicker({ types: [WORKBOOKS] }).then(([handle]) => handle, unpicked);
}

function unpicked(problem: unknown): undefined | 'none' {
  // Shut without a choice; anything else is a browser that has the dialog but not for this page.
  return problem instanceof Error && problem.name === 'AbortError' ? undefined : 'none';
}

/** Whether the page may write to a file that was picked earlier; the browser asks the person where it wants to. */
export async function mayWrite(handle: FileSystemFileHandle): Promise<boolean> {
  if (handle.requestPermission === undefined) return true;
  return (await handle.requestPermission({ mode: 'readwrite' })) === 'granted';
}

/** Writes the whole of a file; it is as it was until all of it is written. Gives when the file was last changed. */
export async function writeTo(handle: FileSystemFileHandle, text: string): Promise<number> {
  const stream = await handle.createWritable();
  await stream.write(text);
  await stream.close();
  return modified(handle);
}

/** When a file was last changed, in milliseconds since 1970. */
export async function modified(handle: FileSystemFileHandle): Promise<number> {
  return (await handle.getFile()).lastModified;
}
