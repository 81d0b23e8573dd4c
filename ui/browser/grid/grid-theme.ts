// The grid's look, from the page's design tokens: its theming parameters point at the custom properties of tokens.css, so
// light and dark follow the page. sheet-grid.ts calls it.

import { createTheme, iconSetQuartzLight } from 'ag-grid-community';

export const gridTheme = createTheme()
  .withPart(iconSetQuartzLight)
  .withParams({
    backgroundColor: 'var(--sheet)',
    foregroundColor: 'var(--ink)',
    accentColor: 'var(--accent)',
    borderColor: 'var(--line)',
    browserColorScheme: 'inherit',
    fontFamily: 'var(--sans)',
    fontSize: 'var(--size-small)',
    spacing: '6px',
    cellTextColor: 'var(--ink)',
    cellHorizontalPadding: '10px',
    dataBackgroundColor: 'var(--sheet)',
    oddRowBackgroundColor: 'transparent',
    rowHoverColor: 'transparent',
    selectedRowBackgroundColor: 'transparent',
    rowHeight: 32,
    rowBorder: { style: 'solid', width: 1, color: 'var(--line)' },
    columnBorder: false,
    wrapperBorder: false,
    wrapperBorderRadius: 0,
    borderRadius: 'var(--corner)',
    headerBackgroundColor: 'var(--ground)',
    headerTextColor: 'var(--ink-soft)',
    headerFontFamily: 'var(--sans)',
    headerFontSize: 'var(--size-small)',
    headerFontWeight: 400,
    headerCellHoverBackgroundColor: 'var(--hover)',
    headerCellMovingBackgroundColor: 'var(--raised)',
    headerRowBorder: { style: 'solid', width: 1, color: 'var(--line)' },
    headerColumnBorder: false,
    headerColumnResizeHandleColor: 'transparent',
    pinnedColumnBorder: { style: 'solid', width: 1, color: 'var(--line-strong)' },
    pinnedRowBorder: { style: 'solid', width: 1, color: 'var(--line)' },
    cellEditingBorder: { style: 'solid', width: 0, color: 'transparent' },
    cellEditingShadow: 'none',
    focusShadow: 'none',
    columnDragIndicatorColor: 'var(--accent)',
    iconColor: 'var(--ink-soft)',
  });

/**
 * The grid's style sheet says of what stands before and after each of its elements how it is measured, though next to none has anything
 * there: a style is worked out for all of them, which is more than half of what styles cost while a sheet is scrolled. Said of the
 * elements alone it means the same here.
 */
export function lightenStyles(): void {
  const own = document.querySelector<HTMLStyleElement>('style[data-ag-css="shared"]');
  const [rule] = own?.sheet?.cssRules ?? [];
  if (rule instanceof CSSStyleRule && rule.selectorText.includes('::after')) {
    rule.selectorText = ':where([class^="ag-"])';
  }
}
