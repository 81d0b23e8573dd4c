// What the very first opening shows: a season of one's own, the demo farm, or a file, each as near as the other. Nothing is worked out
// before one is chosen. Every later visit opens what was worked on last.

import { useState } from 'preact/hooks';
import { CommandButton } from '../commands/command-button.tsx';
import { seasonToPlan } from '../files/fresh.ts';
import { NoticeCorner } from '../page/notice-corner.tsx';
import './first-choice.css';

export function FirstChoice() {
  const [opening, open] = useState('');
  return (
    <>
      <main class="first-choice">
        <header>
          <h1>Dibble</h1>
          <p>
            A season workbook for market gardens: what to grow, how much seed to buy, when to sow and plant, how close,
            and what it yields and earns.
          </p>
        </header>
        <div class="first-ways">
          <section aria-labelledby="way-own">
            <h2 id="way-own">A season of your own</h2>
            <p>
              Four short questions: where you grow, how warm it is, which beds, which crops. Each answer is worked out
              at once and can be changed later.
            </p>
            <CommandButton id="new season" class="primary" then={() => open('your season')}>
              Begin my season {seasonToPlan()}
            </CommandButton>
          </section>
          <section aria-labelledby="way-demo">
            <h2 id="way-demo">The demo farm</h2>
            <p>
              An invented farm with its year planned through: four fields, forty beds, every sheet filled. Look around
              and change what you like.
            </p>
            <CommandButton id="demo farm" class="primary" then={() => open('the demo farm')}>
              Open the demo farm
            </CommandButton>
          </section>
        </div>
        <p>
          Or go on with a workbook saved to a file: <CommandButton id="open">Open a file</CommandButton>
        </p>
        <p class="first-kept" role="status">
          {opening === ''
            ? 'Everything stays on this computer. From the next visit on, the page opens what you worked on last.'
            : `Opening ${opening} ...`}
        </p>
      </main>
      <NoticeCorner />
    </>
  );
}
