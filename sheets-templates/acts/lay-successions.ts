// Lays every succession of a workbook as one act: all of them or none, so that one step of undo takes all back. The page calls
// it; the terminal lays them one by one into one write.

import { type Command, message, rowId, rows, type Workbook } from '../../engine/index.ts';
import { type Act, refused } from './act.ts';
import { laySuccession } from './lay-succession.ts';

/** The commands that lay all successions anew; the sentence of the first that can't be laid where there is one. */
export function laySuccessions(workbook: Workbook): Act {
  const ids = Array.from(rows(workbook, 'successions'), (slot) => rowId(workbook, 'successions', slot));
  if (ids.length === 0) return refused('There are no successions yet: enter them in Successions first.');
  // Each is worked out with those before it laid, whose names are then taken.
  const branch = workbook.branch();
  const commands: Command[] = [];
  const said: string[] = [];
  for (const id of ids) {
    const act = laySuccession(branch, id);
    if (!act.ok) return act;
    const done = branch.do(act.commands, act.message);
    if (done.refused) return refused(done.why);
    commands.push(...act.commands);
    said.push(act.said);
  }
  return {
    ok: true,
    commands,
    message: message('lay successions', { count: String(ids.length) }),
    said: said.join(' '),
  };
}
