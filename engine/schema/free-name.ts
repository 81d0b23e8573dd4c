// A name that nothing has yet, where a wanted one is taken. Formats call it for sheets, distinct-names.ts for sheets and columns,
// the page and the room of scratch papers for papers.

/** The wanted name, or that with the least number from 2 on that is free: 'Trials', then 'Trials 2'. */
export function freeName(wanted: string, isTaken: (name: string) => boolean): string {
  let name = wanted;
  for (let count = 2; isTaken(name); count += 1) name = `${wanted} ${count}`;
  return name;
}
