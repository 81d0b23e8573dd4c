// Above a sheet: its name, what it is for, the cautions that apply to it, and what can be done with it as a whole.

import { useSignal } from '@preact/signals';
import { FORMATS, type SheetView } from '../../../engine/index.ts';
import { CommandButton } from '../commands/command-button.tsx';

export function SheetHead({ sheet }: { readonly sheet: SheetView }) {
  const aboutIsOpen = useSignal(false);
  const { name, about, cautions } = sheet;
  return (
    <header class="sheet-head">
      <h2>{name}</h2>
      <div class="sheet-acts">
        <button
          type="button"
          class="quiet"
          aria-expanded={aboutIsOpen.value}
          aria-controls="about-sheet"
          title={about}
          onClick={() => {
            aboutIsOpen.value = !aboutIsOpen.value;
          }}
        >
          {aboutWords(cautions.length)}
        </button>
        <CommandButton id="add row" />
        <CommandButton id="import" />
        {FORMATS.filter(({ holds }) => holds !== 'workbook').map(({ id }) => (
          <CommandButton key={id} id={`download ${id}`} />
        ))}
      </div>
      {aboutIsOpen.value ? (
        <div class="about-sheet" id="about-sheet">
          <p>{about}</p>
          <Cautions cautions={cautions} />
        </div>
      ) : null}
    </header>
  );
}

function aboutWords(cautions: number): string {
  if (cautions === 0) return 'What it is for';
  return `What it is for, ${cautions === 1 ? 'a caution' : `${cautions} cautions`}`;
}

/** The usual cautions, where they were asked for. */
function Cautions({ cautions }: { readonly cautions: readonly string[] }) {
  if (cautions.length === 0) return null;
  return (
    <ul class="cautions">
      {cautions.map((caution) => (
        <li key={caution}>{caution}</li>
      ))}
    </ul>
  );
}
