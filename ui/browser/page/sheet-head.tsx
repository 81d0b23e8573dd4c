// Above a sheet: its name, what it is for, the cautions that apply to it, and what can be done with it as a whole.

import { useSignal } from '@preact/signals';
import { FORMATS, type SheetView } from '../../../engine/index.ts';
import { CommandButton } from '../commands/command-button.tsx';

export function SheetHead({ sheet }: { readonly sheet: SheetView }) {
  const cautionsOpen = useSignal(false);
  const { name, about, cautions } = sheet;
  return (
    <header class="sheet-head">
      <h2>{name}</h2>
      <div class="sheet-acts">
        {cautions.length === 0 ? null : (
          <button
            type="button"
            class="quiet"
            aria-expanded={cautionsOpen.value}
            aria-controls="cautions"
            onClick={() => {
              cautionsOpen.value = !cautionsOpen.value;
            }}
          >
            {cautions.length === 1 ? 'A caution' : `${cautions.length} cautions`}
          </button>
        )}
        <CommandButton id="add row" />
        <CommandButton id="import" />
        {FORMATS.filter(({ holds }) => holds !== 'workbook').map(({ id }) => (
          <CommandButton key={id} id={`download ${id}`} />
        ))}
      </div>
      <p>{about}</p>
      {cautionsOpen.value ? <Cautions cautions={cautions} /> : null}
    </header>
  );
}

/** The usual cautions, where they were asked for. */
function Cautions({ cautions }: { readonly cautions: readonly string[] }) {
  return (
    <ul class="cautions" id="cautions">
      {cautions.map((caution) => (
        <li key={caution}>{caution}</li>
      ))}
    </ul>
  );
}
