// How a person works the page, for the browser tests: open a sheet, press a cell, type, read what stands there. Found by
// what a person sees (names of sheets and columns, rows by their names); only the grid's cells are found by its markup.

import type { Locator, Page } from 'playwright-core';
import { demoFarm } from '../../demo/farm.ts';
import { civilDay, createWorkbook, type Workbook } from '../../engine/index.ts';

/** The demo farm worked out beside the page: what its cells should read. Its day is the page's: never before today. */
export function demoWorkbook(): Workbook {
  const now = new Date();
  const today = civilDay(now.getUTCFullYear(), now.getUTCMonth() + 1, now.getUTCDate());
  const opened = createWorkbook({ ...demoFarm, today: Math.max(demoFarm.today, today) });
  if (!opened.ok) throw new Error(opened.problems.join(' '));
  return opened.workbook;
}

export class WorkbookPage {
  readonly page: Page;

  constructor(page: Page) {
    this.page = page;
    page.setDefaultTimeout(20_000);
  }

  async openSheet(name: string): Promise<void> {
    const button = this.page.getByRole('navigation', { name: 'Sheets' }).getByRole('button', { name: sheetName(name) });
    await button.click();
    await this.page.getByRole('main', { name, exact: true }).waitFor();
  }

  /** The cell of a row, by the row's place from the top, brought into view as a person would scroll to it. */
  async cell(row: number, column: string): Promise<Locator> {
    const cell = this.page.locator(`.ag-row[row-index="${row}"] .ag-cell[col-id="${column}"]`);
    if ((await cell.count()) === 0 || !(await this.isInView(cell))) await this.scrollTo(row, column);
    return cell;
  }

  /** What a cell reads. */
  async read(row: number, column: string): Promise<string> {
    const cell = await this.cell(row, column);
    // A cell that has just scrolled into view is empty until the grid draws its face.
    const face = cell.locator('.face');
    await face.waitFor({ state: 'attached' });
    return ((await face.textContent()) ?? '').trim();
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

  private async isInView(cell: Locator): Promise<boolean> {
    return cell.evaluate((element) => {
      const box = element.getBoundingClientRect();
      const at = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
      return at !== null && element.contains(at);
    });
  }

  /** Scrolls down to the row and across until the column is there. */
  private async scrollTo(row: number, column: string): Promise<void> {
    const cell = this.page.locator(`.ag-row[row-index="${row}"] .ag-cell[col-id="${column}"]`);
    // A grid that is still being laid out may not scroll as far as asked: then it is asked again.
    for (let attempt = 0; attempt < 5; attempt += 1) {
      await this.scrollOnce(row, column);
      const there = await cell.waitFor({ timeout: 4_000 }).then(
        () => true,
        () => false,
      );
      if (there) return;
    }
    await cell.waitFor();
  }

  private async scrollOnce(row: number, column: string): Promise<void> {
    await this.page.evaluate(
      async ([index, name]) => {
        const grid = document.querySelector('.ag-grid-viewport');
        if (grid === null) return;
        const header = (): Element | undefined =>
          [...document.querySelectorAll('.ag-header-cell')].find((each) => each.getAttribute('col-id') === name);
        // The grid draws what scrolls into view a few frames later: then a cell covers the middle of the window.
        const drawn = async (): Promise<void> => {
          const box = grid.getBoundingClientRect();
          for (let waited = 0; waited < 2_000; waited += 20) {
            await new Promise((resolve) => setTimeout(resolve, 20));
            const middle = document.elementFromPoint(box.left + box.width * 0.6, box.top + 120);
            if (middle?.closest('.ag-cell') != null) return;
          }
        };
        grid.scrollTop = Math.max(0, index * 32 - 160);
        for (let left = 0; header() === undefined && left < grid.scrollWidth; left += grid.clientWidth / 2) {
          grid.scrollLeft = left;
          await drawn();
        }
        header()?.scrollIntoView({ inline: 'center', block: 'nearest' });
        await drawn();
      },
      [row, column] as const,
    );
  }
}

/** A sheet's button reads its name, then perhaps what needs attention and how many rows. */
function sheetName(name: string): RegExp {
  return new RegExp(`^${name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}\\s*(,|\\d|$)`);
}
