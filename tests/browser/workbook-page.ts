// How a person works the page, for the browser tests: open a sheet, press a cell, type, read what stands there. Found by
// what a person sees (names of sheets and columns, rows by their names); only the grid's cells are found by its markup.

import type { Locator, Page } from 'playwright-core';
import { demoFarm } from '../../demo/farm.ts';
import { civilDay } from '../../engine/index.ts';
import { SEASON } from '../../sheets-templates/index.ts';
import { type Book, started } from '../book.ts';
import { onionFarm } from '../onion-farm.ts';
import { drawFrames } from './harness.ts';

let asItComes: Book | undefined;

/** The demo farm as it comes. All tests share one, so nothing is ever changed in it. */
export function demoAsItComes(): Book {
  asItComes ??= demoBook();
  return asItComes;
}

let onionsSo: Book | undefined;

/** Its onions alone, as they come. All tests share them too. */
export function onionsAsTheyCome(): Book {
  onionsSo ??= onionBook();
  return onionsSo;
}

/** The demo farm's onions worked out beside the page. */
export function onionBook(): Book {
  return onionFarm(pagesDay());
}

/** The day of the page: never before today. */
function pagesDay(): number {
  const now = new Date();
  return Math.max(demoFarm.today, civilDay(now.getUTCFullYear(), now.getUTCMonth() + 1, now.getUTCDate()));
}

/** The demo farm worked out beside the page: what its cells should read. */
export function demoBook(): Book {
  const opened = started(SEASON, { ...demoFarm, today: pagesDay() });
  if (!opened.ok) throw new Error(opened.problems.join(' '));
  return opened.workbook;
}

export class WorkbookPage {
  readonly page: Page;
  private sheet = '';
  /** Cells looked for so far. */
  private searches = 0;

  constructor(page: Page) {
    this.page = page;
    page.setDefaultTimeout(20_000);
  }

  /** Opens a sheet in the view that it was last seen in, the first time its first. */
  async comeTo(name: string): Promise<void> {
    const button = this.page.getByRole('navigation', { name: 'Sheets' }).getByRole('button', { name: sheetName(name) });
    await button.click();
    await this.page.getByRole('main', { name, exact: true }).waitFor();
    this.sheet = name;
  }

  /** Opens a sheet with all of its columns. */
  async openSheet(name: string): Promise<void> {
    await this.comeTo(name);
    if ((await this.viewButton('Everything').count()) > 0) await this.look('Everything');
  }

  viewButton(name: string): Locator {
    return this.page
      .getByRole('navigation', { name: 'Views of this sheet' })
      .getByRole('button', { name, exact: true });
  }

  /** Looks at the sheet on screen through one of its views, and waits until the grid shows it. */
  async look(view: string): Promise<void> {
    const button = this.viewButton(view);
    await button.click();
    await button.and(this.page.locator('[aria-pressed="true"]')).waitFor();
    await drawFrames(this.page, 2);
  }

  /** The id of a column of the sheet on screen; of a person's own the one in the page. */
  async columnId(name: string): Promise<string> {
    const declared = SEASON.sheets.find((sheet) => sheet.name === this.sheet);
    const known = declared?.columns.find((column) => column.name === name);
    if (known !== undefined) return known.id;
    const header = this.page.locator('.ag-header-cell').filter({ has: this.page.getByText(name, { exact: true }) });
    return (await header.getAttribute('col-id')) ?? '';
  }

  /** A column's header. */
  async header(name: string): Promise<Locator> {
    return this.page.locator(`.ag-header-cell[col-id="${await this.columnId(name)}"]`);
  }

  /** The cell of a row, by the row's place from the top, brought into view as a person would scroll to it. */
  async cell(row: number, column: string): Promise<Locator> {
    const id = await this.columnId(column);
    await this.page.locator('.ag-row').first().waitFor();
    await this.seek(row, id);
    return this.page.locator(`.ag-row[row-index="${row}"] .ag-cell[col-id="${id}"]`);
  }

  /** What a cell reads, once it is in sight and the grid has drawn its face. */
  async read(row: number, column: string): Promise<string> {
    const id = await this.columnId(column);
    await this.page.locator('.ag-row').first().waitFor();
    return (await this.seek(row, id)) ?? '';
  }

  async press(row: number, column: string): Promise<void> {
    await (await this.cell(row, column)).click();
  }

  /** Types over a cell and takes the entry with Enter. */
  async type(row: number, column: string, entry: string): Promise<void> {
    await this.press(row, column);
    await this.page.keyboard.type(entry);
    await this.page.keyboard.press('Enter');
  }

  /** What stands under the entry box: what the entry means, or why it is refused. */
  entryAnswer(): Locator {
    return this.page.locator('.entry-under p');
  }

  formulaBox(): Locator {
    return this.page.getByRole('region', { name: 'Formula' }).getByRole('textbox');
  }

  formulaAnswer(): Locator {
    return this.page.locator('#formula-answer [role="status"]');
  }

  message(): Locator {
    return this.page.locator('.message');
  }

  undoButton(): Locator {
    return this.page.getByRole('button', { name: /^Undo/ });
  }

  /** Waits until the working copy is kept. */
  async kept(): Promise<void> {
    await this.page.getByText(/kept on this computer, \d\d:\d\d/).waitFor();
  }

  /** The ids of the columns of the sheet on screen in the order in which it is declared; none of a person's own sheet. */
  private order(): readonly string[] {
    const declared = SEASON.sheets.find((sheet) => sheet.name === this.sheet);
    return declared?.columns.map((column) => column.id) ?? [];
  }

  /**
   * Scrolls down to the row and across until the cell is in sight and drawn; gives what it reads, undefined while an entry box
   * stands in it. A wide sheet is scrolled to about where the column stands by those in sight; where columns stand in another
   * order than the sheet's own, the sheet is gone through from end to end.
   */
  private async seek(row: number, column: string): Promise<string | undefined> {
    const found = await this.page.waitForFunction(
      ({ index, id, order, search }) => {
        const grid = document.querySelector('.ag-grid-viewport');
        if (grid === null) return undefined;
        const cell = grid.querySelector(`.ag-row[row-index="${index}"] .ag-cell[col-id="${id}"]`);
        if (cell !== null) {
          const box = cell.getBoundingClientRect();
          const at = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
          // A cell that has just scrolled into view is empty until the grid draws it.
          const typing = cell.querySelector('input, textarea') !== null;
          const drawn = typing || /(^| )role-/.test(cell.className) || cell.querySelector('.face') !== null;
          const reads = typing ? undefined : cell.textContent.trim();
          if (at !== null && cell.contains(at)) return drawn ? { reads } : undefined;
        }
        grid.scrollTop = Math.max(0, index * 32 - 160);
        const header = document.querySelector(`.ag-header-cell[col-id="${id}"]`);
        if (header !== null) {
          header.scrollIntoView({ inline: 'center', block: 'nearest' });
          return undefined;
        }
        const half = grid.clientWidth / 2;
        const last: unknown = Reflect.get(globalThis, 'soughtLast');
        const tried = Array.isArray(last) && last[0] === search ? Number(last[1]) : 0;
        Reflect.set(globalThis, 'soughtLast', [search, tried + 1]);
        const inSight = [...document.querySelectorAll('.ag-grid-scrolling-cells .ag-header-cell[col-id]')];
        const places = inSight.flatMap((one) => {
          const place = order.indexOf(one.getAttribute('col-id') ?? '');
          return place < 0 ? [] : [place];
        });
        const wanted = order.indexOf(id);
        const [least, most] = [Math.min(...places), Math.max(...places)];
        if (tried < 10 && wanted >= 0 && places.length > 0 && (wanted < least || wanted > most)) {
          const width = inSight.reduce((sum, one) => sum + one.getBoundingClientRect().width, 0) / inSight.length;
          const columns = wanted < least ? wanted - least : wanted - most;
          grid.scrollLeft += Math.sign(columns) * Math.max(half, Math.abs(columns) * width);
        } else if (grid.scrollLeft + grid.clientWidth >= grid.scrollWidth - 1) grid.scrollLeft = 0;
        else grid.scrollLeft += half;
        return undefined;
      },
      { index: row, id: column, order: this.order(), search: this.searches++ },
      { polling: 40 },
    );
    return (await found.jsonValue())?.reads;
  }
}

/** A sheet's button reads its name, then perhaps what needs attention and how many rows. */
function sheetName(name: string): RegExp {
  return new RegExp(`^${name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}\\s*(,|\\d|none yet|$)`);
}
