// Keys of the formula line: taking and leaving a text, and the words offered while it is typed. Entries of the table.

import { active, leaveLine, offered } from '../formula-line/draft.ts';
import { part } from '../store/part.ts';
import type { PageCommand } from './command.ts';
import { withPart } from './fetched.ts';

const takingPart = part(() => import('../formula-line/taking.ts'));

/** What takes a text is there by the time that one is typed. */
function taking(work: (part: typeof import('../formula-line/taking.ts')) => void): void {
  withPart(takingPart(), work);
}

const hasOffers = (): boolean => offered.value !== undefined;

export const LINE: readonly PageCommand[] = [
  {
    id: 'next word',
    label: 'To the next word offered',
    keys: ['ArrowDown'],
    where: ['formula line'],
    applies: hasOffers,
    run: () => taking((part) => part.markOffer(1)),
  },
  {
    id: 'previous word',
    label: 'To the word offered before',
    keys: ['ArrowUp'],
    where: ['formula line'],
    applies: hasOffers,
    run: () => taking((part) => part.markOffer(-1)),
  },
  {
    id: 'take word',
    label: 'Take the word offered',
    keys: ['Tab'],
    where: ['formula line'],
    applies: hasOffers,
    run: () => taking((part) => part.takeOffer(Math.max(0, active.peek()))),
  },
  {
    id: 'take marked word',
    label: 'Take the word that is marked',
    keys: ['Enter'],
    where: ['formula line'],
    applies: () => hasOffers() && active.value >= 0,
    run: () => taking((part) => part.takeOffer(active.peek())),
  },
  {
    id: 'hide words',
    label: 'Put the words offered away',
    keys: ['Escape'],
    where: ['formula line'],
    applies: hasOffers,
    run: () => {
      offered.value = undefined;
    },
  },
  {
    id: 'take line',
    label: 'Take what is typed',
    keys: ['Enter'],
    where: ['formula line'],
    run: () => taking((part) => part.takeLine()),
  },
  { id: 'leave line', label: 'Leave the cell as it was', keys: ['Escape'], where: ['formula line'], run: leaveLine },
];
