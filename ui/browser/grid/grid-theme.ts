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
 * What the grid's style sheets say of its elements that shows nothing here: what stands before and after each of them and how it is
 * measured, though next to none has anything there; signs on rows that are hovered over, chosen or dragged by the grid itself,
 * which this page marks in its own way; sides of cells, which it draws itself.
 */
const UNSEEN =
  /^:where\(\[class\^="ag-"\]\)::(before|after)$|(-cells|\.ag-row\b[^ ]*)::(before|after)$|^:where\(\.ag-(ltr|rtl)\) \.ag-cell(:not\(\.ag-cell-inline-editing\))?$/;

/** What every row is given for those. */
const UNUSED = [
  '--ag-internal-content-line-height',
  '--ag-internal-row-overlay-color',
  '--ag-internal-row-overlay-image',
];

/** What rows stand on: every other one is given it, the others let it through. */
const ROW_COLOUR = 'var(--ag-data-background-color)';

const lightened = new WeakSet<CSSStyleSheet>();

/**
 * Takes out of the grid's style sheets what costs every row and cell that comes into view and shows nothing, and says in another way what
 * makes the browser work out the style of each of them by itself: three quarters of what styles cost while a sheet is scrolled.
 * To be called when a grid has been made, which puts its style sheets in the page.
 */
export function lightenStyles(): void {
  for (const { sheet } of document.querySelectorAll<HTMLStyleElement>('style[data-ag-css]')) {
    if (sheet === null || lightened.has(sheet)) continue;
    lightened.add(sheet);
    lighten(sheet);
  }
}

function lighten(within: CSSStyleSheet | CSSGroupingRule | CSSStyleRule): void {
  for (let at = within.cssRules.length - 1; at >= 0; at -= 1) {
    const rule = within.cssRules[at];
    if (rule instanceof CSSStyleRule) {
      const all = rule.selectorText.split(/,\s*(?![^(]*\))/);
      const seen = all.filter((selector) => !UNSEEN.test(selector));
      if (seen.length === 0) {
        within.deleteRule(at);
        continue;
      }
      if (seen.length < all.length) rule.selectorText = seen.join(', ');
      if (all.some((selector) => /^(:where\()?\.ag-row\b/.test(selector))) {
        for (const name of UNUSED) rule.style.removeProperty(name);
      }
      // What stays in sight at the left takes the colour of its row. Where a child asks its parent for that, browsers share no style
      // between the cells beneath, though hundreds have the same.
      if (rule.style.backgroundColor === 'inherit') rule.style.backgroundColor = ROW_COLOUR;
    }
    if (rule instanceof CSSStyleRule || rule instanceof CSSGroupingRule) lighten(rule);
  }
}
