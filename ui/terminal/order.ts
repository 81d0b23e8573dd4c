// `order`: works the whole order out and writes it into the workbook, or prints one supplier's order, as text or CSV.

import type { Workbook } from '../../engine/index.ts';
import { orderCsv, ordersOf, type SupplierOrder, workOutOrder } from '../../sheets-templates/index.ts';
import { carryOut } from './acts.ts';
import type { Given } from './arguments.ts';
import { aligned } from './columns.ts';
import { changeWorkbook, openWorkbook } from './workbook-files.ts';
import { onOneLine, refuse, type World } from './world.ts';

export async function order(given: Given, world: World): Promise<number> {
  const [file = ''] = given.words;
  const supplier = given.values.get('supplier');
  if (supplier !== undefined) return printOrder(file, supplier, given, world);
  if (given.flags.has('csv')) return refuse(`Say whose order: order ${file} --supplier NAME --csv.`);
  return changeWorkbook(file, given, world, (workbook) => {
    const said = carryOut(workbook, orderIn(workbook, file), file);
    const lines = ordersIn(workbook, file).map(
      ({ supplier: name, lines: own, goods, postage }) =>
        `${name}: ${own.length} ${own.length === 1 ? 'line' : 'lines'}, ${(goods + postage).toFixed(2)}`,
    );
    return { says: `${[said, ...lines].map(onOneLine).join('\n')}\n` };
  });
}

function orderIn(workbook: Workbook, file: string): ReturnType<typeof workOutOrder> {
  if (ordersOf(workbook) === undefined) refuse(`${file} has no sheet of orders: only season workbooks do.`);
  return workOutOrder(workbook);
}

function ordersIn(workbook: Workbook, file: string): readonly SupplierOrder[] {
  return ordersOf(workbook) ?? refuse(`${file} has no sheet of orders: only season workbooks do.`);
}

/** The order as the workbook holds it; worked out first, without writing it, where none is. */
async function printOrder(file: string, supplier: string, { flags }: Given, world: World): Promise<number> {
  const workbook = await openWorkbook(file, world);
  if (ordersIn(workbook, file).length === 0) carryOut(workbook, orderIn(workbook, file), file);
  const orders = ordersIn(workbook, file);
  const found = orders.find((one) => one.supplier.toLowerCase() === supplier.toLowerCase());
  if (found === undefined) {
    const names = orders.map((one) => one.supplier).join(', ');
    return refuse(onOneLine(`${file}: nothing is ordered from “${supplier}”: the order goes to ${names}.`));
  }
  world.out(flags.has('csv') ? orderCsv(found) : asText(found));
  return 0;
}

function asText({ supplier, lines, goods, postage }: SupplierOrder): string {
  const cells = lines.map(({ variety, form, pack, count, price, cost, treated }) =>
    [variety, form, pack, `${count} x`, price.toFixed(2), cost.toFixed(2), treated ? 'treated' : ''].map(onOneLine),
  );
  const total = (goods + postage).toFixed(2);
  return `Order from ${onOneLine(supplier)}\n\n${aligned(cells, [3, 4, 5])}\nGoods ${goods.toFixed(2)}, postage ${postage.toFixed(2)}, to pay ${total}\n`;
}
