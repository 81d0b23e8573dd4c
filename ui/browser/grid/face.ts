// The element that holds what a cell shows, where one is needed: most cells hold their text as it is, since the elements of a sheet
// are what scrolling it costs. cell-drawer.ts and grid-entry.ts call it.

/** The face of a cell, with what stood in the cell inside it. An input method that begins on the cell writes beside it. */
export function faceOf(cell: HTMLElement): HTMLElement {
  const { firstElementChild: first } = cell;
  const there = first instanceof HTMLElement && first.classList.contains('face') ? first : undefined;
  const face = there ?? document.createElement('span');
  if (there === undefined) {
    face.className = 'face';
    face.append(...cell.childNodes);
    const { pad } = cell.dataset;
    if (pad !== undefined) {
      face.dataset.pad = pad;
      delete cell.dataset.pad;
    }
    cell.append(face);
  }
  if (cell.hasAttribute('contenteditable')) face.contentEditable = 'false';
  return face;
}
