// Draws the open menu of the page: arrows walk it, Enter takes an item, Escape closes it. The page mounts it once.

import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';
import { closeMenu, type MenuItem, openMenu } from './menu-state.ts';

/** The open menu, or nothing. */
export function Menu() {
  const menu = openMenu.value;
  const box = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const element = box.current;
    if (menu === undefined || element === null) return;
    const { offsetWidth, offsetHeight } = element;
    element.style.left = `${Math.max(4, Math.min(menu.x, window.innerWidth - offsetWidth - 4))}px`;
    element.style.top = `${Math.max(4, Math.min(menu.y, window.innerHeight - offsetHeight - 4))}px`;
    itemsOf(element)[0]?.focus();
  }, [menu]);
  useEffect(() => {
    if (menu === undefined) return undefined;
    const outside = (event: Event): void => {
      if (event.target instanceof Node && box.current?.contains(event.target) !== true) openMenu.value = undefined;
    };
    window.addEventListener('mousedown', outside, true);
    return () => window.removeEventListener('mousedown', outside, true);
  }, [menu]);
  if (menu === undefined) return null;
  return (
    <section aria-label={`${menu.label}, menu`}>
      <div class="menu" role="menu" aria-label={menu.label} ref={box} onKeyDown={onKey}>
        {menu.sets.map((items) => (
          // biome-ignore lint/a11y/useSemanticElements: a set of menu items is a group, not a fieldset
          <div role="group" key={items[0]?.label}>
            {items.map((item) => (
              <Item key={item.label} item={item} />
            ))}
          </div>
        ))}
      </div>
    </section>
  );
}

function Item({ item }: { readonly item: MenuItem }) {
  const can = item.why === undefined;
  return (
    <button
      type="button"
      role="menuitem"
      tabIndex={-1}
      aria-disabled={!can}
      title={item.why}
      onClick={() => {
        if (!can) return;
        closeMenu();
        item.run();
      }}
    >
      <span>{item.label}</span>
      {item.keys === undefined ? null : <kbd>{item.keys}</kbd>}
    </button>
  );
}

function itemsOf(menu: Element): readonly HTMLElement[] {
  return [...menu.querySelectorAll<HTMLElement>('[role="menuitem"]')];
}

function onKey(event: KeyboardEvent): void {
  if (!(event.currentTarget instanceof Element)) return;
  if (event.key === 'Escape' || event.key === 'Tab') {
    event.preventDefault();
    closeMenu();
    return;
  }
  const items = itemsOf(event.currentTarget);
  const focused = document.activeElement;
  const at = focused instanceof HTMLElement ? items.indexOf(focused) : -1;
  const to =
    event.key === 'ArrowDown'
      ? (at + 1) % items.length
      : event.key === 'ArrowUp'
        ? (at - 1 + items.length) % items.length
        : event.key === 'Home'
          ? 0
          : event.key === 'End'
            ? items.length - 1
            : undefined;
  if (to === undefined) return;
  event.preventDefault();
  items[to]?.focus();
}
