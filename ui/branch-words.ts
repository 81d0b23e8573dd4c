// What both faces say of a branch's changes that the plan has no place for any more.

/** Behind a change in a list, by how much of it is lost. */
export const LOST = {
  all: '– the plan has taken its row or sheet out since.',
  some: '– the plan has taken some of its rows out since.',
} as const;

/** Behind what is said when a branch is kept: how many of its changes could not be done, or not wholly. */
export function withoutLost(count: number): string {
  if (count === 0) return '';
  const changes = count === 1 ? 'One change of it was' : `${count} changes of it were`;
  return ` ${changes} left out where the plan has taken the row or sheet out since.`;
}
