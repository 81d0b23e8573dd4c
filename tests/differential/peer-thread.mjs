// The thread in which the peer, hyperformula, works sheets out: takes a workbook of cells, gives the values of one sheet back.
// Raw doubles, not rounded when read; dates as ISO 8601 writes them. Started by peer.ts.

import { parentPort } from 'node:worker_threads';
import { HyperFormula } from 'hyperformula';

const SETTINGS = { licenseKey: 'gpl-v3', smartRounding: false, dateFormats: ['YYYY-MM-DD'] };

function plain(value) {
  return typeof value === 'object' && value !== null ? { type: value.type } : value;
}

parentPort?.on('message', ({ id, sheets, wanted }) => {
  try {
    const engine = HyperFormula.buildFromSheets(sheets, SETTINGS);
    const values = engine.getSheetValues(engine.getSheetId(wanted)).map((row) => row.map(plain));
    engine.destroy();
    parentPort?.postMessage({ id, values });
  } catch (failure) {
    parentPort?.postMessage({ id, failure: String(failure) });
  }
});
