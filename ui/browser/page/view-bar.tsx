// Under a sheet's name: the views it can be looked at through, and what the one on screen does with the rows.

import { useLayoutEffect, useRef } from 'preact/hooks';
import type { SheetView } from '../../../engine/index.ts';
import { showMenu } from '../commands/menu-state.ts';
import { menuItems } from '../commands/menus.ts';
import { Situation } from '../commands/situation.ts';
import { chooseView, viewOn, viewsOf } from '../store/looks.ts';
import { useSteady } from '../store/steady.ts';
import { later } from './later.tsx';

const ViewState = later(() => import('./view-state.tsx').then((part) => part.ViewState));

export function ViewBar({ sheet }: { readonly sheet: SheetView }) {
  const views = useSteady(sheet, viewsOf);
  const view = useSteady(sheet, viewOn);
  const pressed = useRef<HTMLButtonElement>(null);
  useLayoutEffect(() => {
    pressed.current?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }, [sheet.id, view.id]);
  return (
    <div class="view-bar">
      <nav class="views" aria-label="Views of this sheet">
        {views.map(({ id, name }) => (
          <button
            key={id}
            type="button"
            class="quiet"
            aria-pressed={id === view.id}
            ref={id === view.id ? pressed : null}
            onClick={() => chooseView(sheet.id, id)}
          >
            {name}
          </button>
        ))}
      </nav>
      <ViewState sheet={sheet} view={view} />
      <button
        type="button"
        class="quiet"
        aria-haspopup="menu"
        onClick={({ currentTarget }) => {
          const { right, bottom } = currentTarget.getBoundingClientRect();
          const each = views.map(({ id, name }) => ({
            label: id === view.id ? `${name} (now)` : name,
            keys: undefined,
            why: undefined,
            run: () => chooseView(sheet.id, id),
          }));
          const sets = [each, ...menuItems('view', new Situation('page'))];
          showMenu({ x: right - 240, y: bottom + 4, label: 'View', sets });
        }}
      >
        View
      </button>
    </div>
  );
}
