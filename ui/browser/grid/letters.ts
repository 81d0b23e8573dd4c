// Whether a text surely fits its cell, by the widths of its letters. A cell whose text might be cut needs a clip of its own, and hundreds of
// clips cost something in each frame while a sheet is scrolled: where the text fits there is none. sheet-grid.ts has
// the letters measured when the page is idle; cell-drawer.ts asks for every cell that it draws.

/** How a cell's text is set: grid.css says so of these. */
export type Cut = 'plain' | 'slanted' | 'strong';

const CUTS: readonly Cut[] = ['plain', 'slanted', 'strong'];

/** Of other scripts the letters change beside one another, so that their widths say nothing of a text's. */
const LETTERS =
  ' !"#$%&\'()*+,-./0123456789:;<=>?@ABCDEFGHIJKLMNOPQRSTUVWXYZ[\\]^_`abcdefghijklmnopqrstuvwxyz{|}~' +
  '\u00a0\u00b0\u00b2\u00b3\u00b7\u00bc\u00bd\u00be\u00d7\u00c4\u00d6\u00dc\u00df\u00e0\u00e4\u00e8\u00e9\u00f1\u00f6\u00fc\u2013\u2014\u2018\u2019\u201c\u201d\u2026\u202f\u20ac\u2212';

/** What two letters beside each other may take more than each by itself, all together: pixels. */
const SLACK = 2;

let widths: Readonly<Record<Cut, ReadonlyMap<number, number>>> | undefined;

/** Measures the letters as the cells of a grid have them, once for the page. */
export function measureLetters(host: HTMLElement): void {
  const cell = widths === undefined ? host.querySelector('.ag-cell') : null;
  if (cell === null) return;
  const probes = CUTS.map((cut) => {
    const probe = document.createElement('span');
    probe.className = `letters letters-${cut}`;
    // With a blank between them no two of them are drawn closer together.
    probe.textContent = [...LETTERS].join(' ');
    return probe;
  });
  cell.append(...probes);
  const [plain, slanted, strong] = probes.map(widthsIn);
  for (const probe of probes) probe.remove();
  if (plain !== undefined && slanted !== undefined && strong !== undefined) widths = { plain, slanted, strong };
}

function widthsIn(probe: HTMLElement): ReadonlyMap<number, number> {
  const found = new Map<number, number>();
  const { firstChild: text } = probe;
  if (text === null) return found;
  const range = document.createRange();
  for (let at = 0; at < LETTERS.length; at += 1) {
    range.setStart(text, 2 * at);
    range.setEnd(text, 2 * at + 1);
    found.set(LETTERS.charCodeAt(at), range.getBoundingClientRect().width);
  }
  return found;
}

/** Whether a text is surely no wider than so many pixels; false where nobody can tell. */
export function surelyFits(text: string, cut: Cut, room: number): boolean {
  if (widths === undefined) return false;
  const known = widths[cut];
  let left = room - SLACK;
  for (let at = 0; at < text.length; at += 1) {
    left -= known.get(text.charCodeAt(at)) ?? Number.POSITIVE_INFINITY;
    if (left < 0) return false;
  }
  return true;
}
