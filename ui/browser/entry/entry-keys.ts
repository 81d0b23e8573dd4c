// The keys of an entry box besides those of the table of commands, for the page of keys.

export const ENTRY_BOX_KEYS: readonly { readonly label: string; readonly keys: readonly string[] }[] = [
  { label: 'Begin another line of a text', keys: ['Alt Enter'] },
];
