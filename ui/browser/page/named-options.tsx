// The options of a list from which one of several named things is chosen: sheets, columns, views, figures. Dialogs and the phone
// call it.

import type { JSX } from 'preact';

export function namedOptions(all: readonly { readonly id: string; readonly name: string }[]): readonly JSX.Element[] {
  return all.map(({ id, name }) => (
    <option key={id} value={id}>
      {name}
    </option>
  ));
}
