// Prose is written with its temperatures in one system, and with other measures in both; here it gets the workbook's own.

type System = 'us' | 'si';

const NUMBER = '-?\\d+(?:\\.\\d+)?';
const DEGREES = new RegExp(`(?:(${NUMBER})( to | and ))?(${NUMBER}) deg([CF])( days?\\b)?`, 'g');

/** Notes in the workbook's own units: of '{4 to 6 in|10 to 15 cm}' the first where US customary units are read, and own degrees. */
export function inOwnUnits(text: string, units: System): string {
  return inOwnDegrees(text.replace(/\{(.*?)\|(.*?)\}/g, units === 'us' ? '$1' : '$2'), units);
}

/** Prose with its temperatures in the workbook's own degrees: '20 to 30 degC' is '68 to 86 °F' where those are read. */
export function inOwnDegrees(text: string, units: System): string {
  if (!/ deg[CF]\b/.test(text)) return text;
  const own = units === 'us' ? 'F' : 'C';
  return text.replace(DEGREES, (_, first: string | undefined, between = '', last = '', scale = '', days = '') => {
    const turned = (figure: string): string => (scale === own ? figure : turn(figure, own, days !== ''));
    return `${first === undefined ? '' : `${turned(first)}${between}`}${turned(last)} °${own}${days}`;
  });
}

/** To a tenth where the figure has one, else to a whole degree; sums of warmth have no zero to begin from. */
function turn(figure: string, own: string, sums: boolean): string {
  const zero = sums ? 0 : 32;
  const turned = own === 'F' ? Number(figure) * 1.8 + zero : (Number(figure) - zero) / 1.8;
  return turned.toFixed(figure.includes('.') ? 1 : 0).replace(/^-0$/, '0');
}
