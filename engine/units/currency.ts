// Currencies by ISO 4217 code: the signs people write and the digits after the decimal mark. A workbook counts in one of
// them; the others are known so that an amount in another can be told apart from a misspelt unit. Calls nothing.

export interface Currency {
  readonly code: string;
  /** As written before or after an amount; the first is the usual one. */
  readonly signs: readonly string[];
  /** Digits after the decimal mark (ISO 4217 minor unit). */
  readonly decimals: number;
}

const LISTED: readonly (readonly [code: string, signs: string, decimals: number])[] = [
  ['USD', '$ US$', 2],
  ['CAD', '$ C$ CA$', 2],
  ['AUD', '$ A$ AU$', 2],
  ['NZD', '$ NZ$', 2],
  ['MXN', '$ MX$', 2],
  ['EUR', '€', 2],
  ['GBP', '£', 2],
  ['CHF', 'Fr. Fr SFr.', 2],
  ['JPY', '¥', 0],
  ['CNY', '¥ 元', 2],
  ['INR', '₹', 2],
  ['KRW', '₩', 0],
  ['BRL', 'R$', 2],
  ['ARS', '$', 2],
  ['CLP', '$', 0],
  ['COP', '$', 2],
  ['ZAR', 'R', 2],
  ['SEK', 'kr', 2],
  ['NOK', 'kr', 2],
  ['DKK', 'kr kr.', 2],
  ['ISK', 'kr', 0],
  ['PLN', 'zł', 2],
  ['CZK', 'Kč', 2],
  ['HUF', 'Ft', 2],
  ['RON', 'lei', 2],
  ['BGN', 'лв', 2],
  ['UAH', '₴', 2],
  ['TRY', '₺', 2],
  ['ILS', '₪', 2],
  ['PHP', '₱', 2],
  ['THB', '฿', 2],
  ['VND', '₫', 0],
  ['NGN', '₦', 2],
  ['KES', 'KSh', 2],
];

const CURRENCIES: ReadonlyMap<string, Currency> = new Map(
  LISTED.map(([code, signs, decimals]) => [code, { code, signs: signs.split(' '), decimals }]),
);

/** The currency of a code; one that isn't listed has no sign and two digits. */
export function currencyOf(code: string): Currency {
  return CURRENCIES.get(code) ?? { code, signs: [], decimals: 2 };
}

/** The code of the listed currency that a code or sign names, whichever the workbook counts in; undefined for none. */
export function currencyNamed(text: string): string | undefined {
  const upper = text.toUpperCase();
  if (CURRENCIES.has(upper)) return upper;
  return LISTED.find(([, signs]) => signs.split(' ').includes(text))?.[0];
}
