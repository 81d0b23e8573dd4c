// The regions of the page that F6 walks through.

/** As selectors of what takes the focus in them. */
const REGIONS = [
  '#go-to',
  '.sheet-list [aria-current], .list-shut .fold-list',
  '.formula-box textarea',
  '.ag-cell[tabindex], .field-value, .scratch-grid',
  '.panel-inside button, .panel-inside input',
  '.attention-button',
];

/** Puts the focus in the next region that is there, or with -1 in the one before. */
export function toNextRegion(step: 1 | -1): void {
  const stops = REGIONS.map((region) => document.querySelector<HTMLElement>(region)).filter((stop) => stop !== null);
  const focused = document.activeElement;
  const at = REGIONS.findIndex((region) => focused?.matches(region) === true);
  const from = at < 0 ? stops.findIndex((stop) => stop.parentElement?.contains(focused) === true) : at;
  stops[(from + step + stops.length) % stops.length]?.focus();
}
