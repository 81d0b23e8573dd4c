// Draws its share of the seasons beside the page, on a copy of the workbook, and tells how far it is. It opens the copy, and draws
// ahead of what is most likely to be asked, while a person still chooses: what is asked then is drawn on from there, and where it is
// something else the way there is trodden. Between two words it hears whether something else is asked. Begun and ended by
// draws-workers.ts.

import { Draws, toBeSent, uncertainInputs, type Workbook } from '../../../engine/index.ts';
import { SEASON_CHANCES } from '../../../sheets-templates/index.ts';
import { streams } from '../../chance.ts';
import { withWanted } from '../../wanted.ts';
import { openCopy } from '../files/open-copy.ts';
import { DrawnAhead } from './drawn-ahead.ts';
import type { DrawsAsked, DrawsTold, SeasonsOrder } from './draws-messages.ts';

/** Seasons between two words of how far it is. */
const AT_ONCE = 25;
/** The longest that is spent on what nobody has asked for yet, ms. */
const LONGEST = 3000;

/** Something else that was asked ends what is under way. */
let asks = 0;
const ahead = new DrawnAhead();
/** The workbook, or why there is none. */
let opened: Promise<Workbook | string> = Promise.resolve('No plan was given to draw from.');

addEventListener('message', ({ data: asked }: MessageEvent<DrawsAsked>) => {
  asks += 1;
  if (asked.ask === 'open') {
    opened = openCopy(asked.data, 'draws');
    // What fails here fails again, and is told, once it is asked for.
    if (asked.likely !== undefined) void drawAhead(asked.likely, asks).catch(() => undefined);
  } else if (asked.ask === 'draw') {
    const { drawing } = asked;
    void draw(drawing, asked.order, asks).catch((fault: unknown) => {
      const said = fault instanceof Error ? fault.message : String(fault);
      tell({ drawing, told: 'failed', why: `The seasons could not be drawn (a fault in Dibble: ${said}).` });
    });
  }
});

function tell(told: DrawsTold): void {
  postMessage(told);
}

function drawsOf(workbook: Workbook, { figures, weekly, from, until, seed }: SeasonsOrder): Draws | string {
  const inputs = uncertainInputs(workbook, SEASON_CHANCES.plan);
  if (inputs.length === 0) return 'Every figure is known for sure: type some as ranges first, such as 80..90%.';
  const order = { inputs, asked: { figures, weekly }, from, until, chances: SEASON_CHANCES };
  return new Draws(workbook, order, streams(seed));
}

function made(workbook: Workbook, order: SeasonsOrder): Promise<Draws | string> {
  return withWanted(() => drawsOf(workbook, order));
}

async function draw(drawing: number, order: SeasonsOrder, asked: number): Promise<void> {
  const workbook = await opened;
  const draws = typeof workbook === 'string' ? workbook : (ahead.take(order) ?? (await made(workbook, order)));
  if (asks !== asked) return;
  if (typeof draws === 'string') {
    tell({ drawing, told: 'failed', why: draws });
    return;
  }
  while (!draws.isDone) {
    const why = draws.step(AT_ONCE);
    if (why !== undefined) {
      tell({ drawing, told: 'failed', why });
      return;
    }
    tell({ drawing, told: 'progress', done: draws.done });
    await turn();
    if (asks !== asked) return;
  }
  tell({ drawing, told: 'drawn', drawn: toBeSent(draws.result()) });
}

async function drawAhead(order: SeasonsOrder, asked: number): Promise<void> {
  const workbook = await opened;
  if (typeof workbook === 'string' || asks !== asked) return;
  const began = performance.now();
  const draws = await made(workbook, order);
  if (typeof draws === 'string') return;
  while (asks === asked && !draws.isDone && performance.now() - began < LONGEST) {
    // What is refused here is refused again, and told, once it is asked for.
    if (draws.step(1) !== undefined) return;
    ahead.keep(order, draws);
    await turn();
  }
}

const { port1, port2 } = new MessageChannel();

/** Lets what was asked meanwhile be heard. */
function turn(): Promise<void> {
  return new Promise((go) => {
    port1.onmessage = () => go();
    port2.postMessage(undefined);
  });
}
