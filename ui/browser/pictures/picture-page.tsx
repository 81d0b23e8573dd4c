// The pictures of the farm in the page: their names in a row, the one chosen below.

import { view } from '../store/view.ts';
import { workbook } from '../store/workbook.ts';
import './picture-page.css';
import { picturesOf } from './list.ts';

export function PicturePage({ picture }: { readonly picture: string }) {
  const pictures = picturesOf(workbook());
  const shown = pictures.find(({ id }) => id === picture) ?? pictures[0];
  return (
    <div class="picture-page">
      <h2>Pictures of the farm</h2>
      <nav class="picture-names" aria-label="Pictures">
        {pictures.map(({ id, name, question }) => (
          <button
            key={id}
            type="button"
            title={question}
            aria-current={id === shown?.id ? 'page' : undefined}
            onClick={() => {
              view.value = { at: 'pictures', picture: id };
            }}
          >
            {name}
          </button>
        ))}
      </nav>
      {shown === undefined ? (
        <p class="no-picture">This workbook has no sheets that a picture could be drawn from.</p>
      ) : (
        <section aria-label={shown.name} key={shown.id}>
          <p class="picture-question">{shown.question}</p>
          <shown.Show />
        </section>
      )}
    </div>
  );
}
