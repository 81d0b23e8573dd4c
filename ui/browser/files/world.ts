// What the engine can't know by itself, as a browser has it: ids from chance, the clock, who works here, and the templates,
// today's and those of earlier versions that were fetched.

import { civilDay, loadFormerFunctions, type Template, type World } from '../../../engine/index.ts';
import { earlierTemplate } from '../../../sheets-templates/earlier.ts';
import { templateShelf, todaysTemplate } from '../../../sheets-templates/index.ts';
import { remember, remembered } from '../store/single-words.ts';
import { writingOf } from '../store/writing.ts';

const ACTOR = 'dibble: actor';

const earlier: Template[] = [];
const smaller: Template[] = [];

export const templates = templateShelf(earlier, smaller);

/** Fetches the template that a file was made from, and today's of its name, where they are not here yet. */
export async function fetchTemplate(wanted: { readonly name: string; readonly version: number }): Promise<void> {
  const { name, version } = wanted;
  if (templates.today(name) === undefined) {
    const today = await todaysTemplate(name);
    if (today !== undefined) smaller.push(today);
  }
  if (templates.today(name)?.version === version || templates.earlier(name, version) !== undefined) return;
  const [template] = await Promise.all([earlierTemplate(name, version), loadFormerFunctions()]);
  if (template !== undefined && templates.earlier(name, version) === undefined) earlier.push(template);
}

/** A letter and twelve letters and digits that nothing has yet. */
export function newId(): string {
  const numbers = crypto.getRandomValues(new Uint32Array(2));
  return `r${Array.from(numbers, (number) => number.toString(36).padStart(7, '0').slice(-6)).join('')}`;
}

let actor: string | undefined;

/** Whoever works in this browser, told apart from others; for this visit alone where the browser remembers nothing. */
function actorHere(): string {
  if (actor !== undefined) return actor;
  const known = remembered(ACTOR);
  actor = known ?? newId();
  if (known === undefined) remember(ACTOR, actor);
  return actor;
}

export function world(): World {
  return { newId, now: () => Date.now(), actor: actorHere(), templates, writings: writingOf };
}

/** Today as the civil day of the computer's own calendar. */
export function today(): number {
  const now = new Date();
  return civilDay(now.getFullYear(), now.getMonth() + 1, now.getDate());
}
