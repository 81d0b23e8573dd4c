// Draws its share of the seasons beside the page, on a copy of the workbook, and tells how far it is. Taking it down is how it is cancelled.

import { Draws, loadGeneralUnits, uncertainInputs, Workbook } from '../../../engine/index.ts';
import { SEASON_CHANCES } from '../../../sheets-templates/index.ts';
import { streams } from '../../chance.ts';
import { fetchTemplate, newId, templates } from '../files/world.ts';
import { type DrawsAsked, type DrawsTold, toldOf } from './draws-messages.ts';

/** Seasons between two words of how far it is. */
const AT_ONCE = 25;

addEventListener('message', ({ data }: MessageEvent<DrawsAsked>) => {
  void draw(data).catch((fault: unknown) => {
    const said = fault instanceof Error ? fault.message : String(fault);
    tell({ told: 'failed', why: `The seasons could not be drawn (a fault in Dibble: ${said}).` });
  });
});

function tell(told: DrawsTold): void {
  postMessage(told);
}

async function draw({ data, figures, weekly, from, until, seed }: DrawsAsked): Promise<void> {
  await fetchTemplate(data.template);
  await loadGeneralUnits();
  const workbook = Workbook.open(data, { newId, now: () => Date.now(), actor: 'draws', templates });
  if (workbook === undefined) {
    tell({ told: 'failed', why: 'The sheets of the workbook could not be fetched: try again.' });
    return;
  }
  const inputs = uncertainInputs(workbook, SEASON_CHANCES.plan);
  if (inputs.length === 0) {
    tell({ told: 'failed', why: 'Every figure is known for sure: type some as ranges first, such as 80..90%.' });
    return;
  }
  const order = { inputs, asked: { figures, weekly }, from, until, chances: SEASON_CHANCES };
  const draws = new Draws(workbook, order, streams(seed));
  while (!draws.isDone) {
    const why = draws.step(AT_ONCE);
    if (why !== undefined) {
      tell({ told: 'failed', why });
      return;
    }
    tell({ told: 'progress', done: draws.done });
  }
  tell(toldOf(draws.result()));
}
