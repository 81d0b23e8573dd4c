// How the page puts the time at which something was kept, by this computer's own clock and calendar: the top line, and the lists
// of workbooks and versions.

/** '2027-03-04 16:20'. */
export function when(at: number): string {
  const time = new Date(at);
  const [day, clock] = [
    [time.getFullYear(), time.getMonth() + 1, time.getDate()],
    [time.getHours(), time.getMinutes()],
  ].map((parts) => parts.map((part) => String(part).padStart(2, '0')));
  return `${day?.join('-') ?? ''} ${clock?.join(':') ?? ''}`;
}

/** '16:20' where that is of the same day as now, else with its day. */
export function whenSeenFrom(now: number, at: number): string {
  const words = when(at);
  const today = when(now).slice(0, -5);
  return words.startsWith(today) ? words.slice(today.length) : words;
}
