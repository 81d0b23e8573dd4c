// How figures and days are written in this workbook: as the computer says, or as in a place that is chosen and kept with it.

import { useSignal } from '@preact/signals';
import { message, settings, showDate } from '../../../engine/index.ts';
import { change } from '../store/change.ts';
import { workbook } from '../store/workbook.ts';
import { browserLocale, writingOf } from '../store/writing.ts';
import { Dialog } from './dialog.tsx';
import { localeDialog } from './locale-state.ts';

/** Places that write figures or days each in a way of its own; any other may be written by its tag. */
const PLACES = [
  'en-US',
  'en-GB',
  'en-CA',
  'en-IE',
  'de-DE',
  'de-CH',
  'fr-FR',
  'fr-CA',
  'nl-NL',
  'es-ES',
  'it-IT',
  'pt-BR',
  'pl-PL',
  'sv-SE',
  'da-DK',
  'cs-CZ',
  'ja-JP',
];

export function LocaleDialog() {
  const book = workbook();
  const { locale } = settings(book);
  const chosen = useSignal(locale ?? '');
  const leave = (): void => {
    localeDialog.value = false;
  };
  const take = (): void => {
    const next = chosen.value === '' ? null : chosen.value;
    const said = message('set locale', { locale: next ?? browserLocale() });
    if (!change([{ command: 'set locale', locale: next }], said).refused) leave();
  };
  const known = locale === undefined || PLACES.includes(locale) ? PLACES : [...PLACES, locale];
  return (
    <Dialog id="locale" title="How figures and days are written" takes="Write them so" onTake={take} onLeave={leave}>
      <div>
        <label for="locale-choice">As in</label>
        <select
          id="locale-choice"
          value={chosen.value}
          onChange={({ currentTarget }) => {
            chosen.value = currentTarget.value;
          }}
        >
          <option value="">{`this computer (${nameOf(browserLocale())})`}</option>
          {known.map((tag) => (
            <option key={tag} value={tag}>
              {nameOf(tag)}
            </option>
          ))}
        </select>
      </div>
      <p role="status">{example(chosen.value === '' ? undefined : chosen.value, settings(book).today)}</p>
    </Dialog>
  );
}

function nameOf(tag: string): string {
  return new Intl.DisplayNames(['en'], { type: 'language' }).of(tag) ?? tag;
}

/** 'For example 1.234,5 and 3. Apr. 2027.' */
function example(locale: string | undefined, today: number): string {
  const writing = writingOf(locale);
  const figure = `1${writing.group}234${writing.decimal}5`;
  return `For example ${figure} and ${showDate(today, writing)}; typed days have the ${writing.dayFirst ? 'day' : 'month'} first.`;
}
