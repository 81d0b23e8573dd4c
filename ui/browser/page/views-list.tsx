// Above the sheets: the ways of looking at the season as a whole. The list of sheets mounts it.

import { hasGlance, shownView } from '../glance/opening.ts';
import { type View, view } from '../store/view.ts';
import { workbook } from '../store/workbook.ts';

const VIEWS: readonly { readonly name: string; readonly to: View }[] = [
  { name: 'At a glance', to: { at: 'glance' } },
  { name: 'Pictures', to: { at: 'pictures', picture: '' } },
  { name: 'Paper', to: { at: 'paper', pages: '' } },
];

export function ViewsList() {
  const book = workbook();
  if (!hasGlance(book)) return null;
  const here = shownView(book, view.value).at;
  return (
    <ul class="views-list">
      {VIEWS.map(({ name, to }) => (
        <li key={name}>
          <button
            type="button"
            aria-current={here === to.at ? 'page' : undefined}
            onClick={() => {
              view.value = to;
            }}
          >
            <span class="sheet-name">{name}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}
