// What the general spreadsheet functions have that formulas here have not, why, and what to use. Read by elsewhere.ts, for the checker,
// which tells it where such a name is written, and by the documentation.

export interface LeftOut {
  readonly name: string;
  readonly why: string;
  readonly use: string;
}

function group(names: string, why: string, use: string): readonly LeftOut[] {
  return names.split(' ').map((name) => ({ name, why, use }));
}

const NO_ADDRESSES = 'A sheet here has named columns and rows that keep their name, not cell addresses';
const NO_HEADING_ROW =
  'It looks along a row of headings, and here headings are the names of columns: which one it meets, and so its type and unit, would be known only while it calculates';
const NOT_THE_SAME_TWICE = 'It would give another value at each recalculation, and a plan must give the same twice';
const NO_ARRAYS = 'It gives a whole block of cells, and a formula here gives one value a row';
const NO_COMPLEX = 'Complex numbers and number systems have no use in a season plan';

/** Every function of the standard's Small group that is missing is here, and others that people may look for. */
export const LEFT_OUT: readonly LeftOut[] = [
  ...group('HLOOKUP', NO_HEADING_ROW, 'VLOOKUP or XLOOKUP, or [Column] itself'),
  ...group('NOW', NOT_THE_SAME_TWICE, 'TODAY, an input of the workbook'),
  ...group('RAND RANDBETWEEN RANDARRAY', NOT_THE_SAME_TWICE, 'a column in which the numbers are entered'),
  ...group('INDIRECT OFFSET', NO_ADDRESSES, '[Link].[Column], XLOOKUP or INDEX'),
  ...group(
    'ADDRESS AREAS CELL COLUMN ROW ISREF SHEET SHEETS FORMULA FORMULATEXT ISFORMULA',
    NO_ADDRESSES,
    'names of columns',
  ),
  ...group('INFO', 'It would tell of the program and not of the plan', 'nothing'),
  ...group('ERROR.TYPE TYPE', 'Types are known before anything is calculated', 'ISNA, ISERR, ISNUMBER or ISTEXT'),
  ...group('SUBTOTAL AGGREGATE', 'What is hidden or filtered on the screen does not change a figure', 'SUM or SUMIFS'),
  ...group(
    'GETPIVOTDATA MULTIPLE.OPERATIONS',
    'Sheets here sum up by formulas that stay current',
    'SUMIFS, or a what-if',
  ),
  ...group('HYPERLINK', 'A formula gives a value, not a way elsewhere', 'a text column'),
  ...group(
    'DDE RTD WEBSERVICE ENCODEURL CUBEVALUE',
    'A workbook reads nothing from outside while it calculates',
    'importing a CSV file',
  ),
  ...group('LINEST', NO_ARRAYS, 'SLOPE, INTERCEPT, RSQ and STEYX'),
  ...group('TREND', NO_ARRAYS, 'FORECAST'),
  ...group('LOGEST GROWTH', NO_ARRAYS, 'SLOPE and INTERCEPT of a column of LN'),
  ...group('FREQUENCY', NO_ARRAYS, 'COUNTIFS with two conditions'),
  ...group(
    'TRANSPOSE MMULT MINVERSE MDETERM MUNIT FILTER SORT SORTBY UNIQUE SEQUENCE TAKE DROP EXPAND CHOOSECOLS CHOOSEROWS VSTACK HSTACK TOCOL TOROW WRAPROWS WRAPCOLS TRIMRANGE GROUPBY PIVOTBY MODE.MULT COUNTUNIQUE',
    NO_ARRAYS,
    'a sheet whose rows come from another',
  ),
  ...group(
    'MAXA MINA AVERAGEA STDEVA STDEVPA VARA VARPA',
    'Text and yes or no are no numbers here',
    'MAX, MIN, AVERAGE, STDEV or VAR, and N',
  ),
  ...group(
    'LAMBDA MAP REDUCE SCAN BYROW BYCOL MAKEARRAY ISOMITTED',
    'A formula names its parts through columns',
    'a computed column',
  ),
  ...group('NETWORKDAYS.INTL', 'One function takes any week', 'NETWORKDAYS with the days off named: "Sun"'),
  ...group('WORKDAY.INTL', 'One function takes any week', 'WORKDAY with the days off named: "Sun"'),
  ...group('VALUEL', 'Numbers in texts are read in one way only', 'VALUE'),
  ...group(
    'NUMBERVALUE',
    'Numbers in texts are read in one way only',
    'VALUE, with SUBSTITUTE for another decimal mark',
  ),
  ...group(
    'EUROCONVERT DOLLAR USDOLLAR DOLLARDE DOLLARFR BAHTTEXT',
    'A workbook counts in one currency',
    'TEXT([Price]; "0.00")',
  ),
  ...group(
    'LENB LEFTB RIGHTB MIDB FINDB SEARCHB REPLACEB ASC JIS',
    'Texts are counted in letters, not in bytes',
    'LEN, LEFT, RIGHT, MID, FIND',
  ),
  ...group(
    'ROMAN ARABIC BASE DECIMAL BIN2DEC BIN2HEX BIN2OCT DEC2BIN DEC2HEX DEC2OCT HEX2DEC HEX2BIN HEX2OCT OCT2DEC OCT2BIN OCT2HEX',
    NO_COMPLEX,
    'TEXT',
  ),
  ...group('BITAND BITOR BITXOR BITLSHIFT BITRSHIFT', NO_COMPLEX, 'AND, OR or XOR of yes/no columns'),
  ...group(
    'COMPLEX IMABS IMAGINARY IMARGUMENT IMCONJUGATE IMCOS IMCOSH IMCOT IMCSC IMCSCH IMDIV IMEXP IMLN IMLOG10 IMLOG2 IMPOWER IMPRODUCT IMREAL IMSEC IMSECH IMSIN IMSINH IMSQRT IMSUB IMSUM IMTAN',
    NO_COMPLEX,
    'plain numbers',
  ),
  ...group(
    'BESSELI BESSELJ BESSELK BESSELY ERF ERFC GAMMA GAMMALN GAMMALN.PRECISE DELTA GESTEP',
    'No season plan needs it',
    'NORM.S.DIST for ERF, FACT for GAMMA, = and >= for DELTA and GESTEP',
  ),
  ...group(
    'NORMSDIST NORMSINV CHIDIST CHIINV TDIST',
    'OpenFormula keeps the old meaning under a name with LEGACY before it',
    'LEGACY.NORMSDIST, LEGACY.NORMSINV, LEGACY.CHIDIST, LEGACY.CHIINV, LEGACY.TDIST',
  ),
  ...group(
    'LOGNORM.DIST LOGNORM.INV LOGNORMDIST LOGINV',
    'The logarithm of such a size is normally distributed',
    'NORM.DIST of LN, and EXP of NORM.INV',
  ),
  ...group(
    'NEGBINOM.DIST NEGBINOMDIST',
    'It asks the binomial distribution the other way round: trials for successes',
    'BINOM.DIST',
  ),
  ...group(
    'F.TEST FTEST',
    'It is the share of an F distribution beyond the ratio of two variances, which can be said outright',
    'F.DIST.RT of VAR divided by VAR',
  ),
  ...group(
    'CHISQ.TEST CHITEST LEGACY.CHITEST',
    'It compares two blocks of cells, and here the squared differences stand in a column',
    'CHISQ.DIST.RT of their SUM',
  ),
  ...group('Z.TEST ZTEST', 'The spread of a trial is hardly ever known beforehand', 'T.TEST, or NORM.S.DIST'),
  ...group('SKEW.P SKEWP', 'Values of a season are a sample of all seasons', 'SKEW'),
  ...group('FISHER FISHERINV', 'It is a hyperbolic function under another name', 'ATANH and TANH'),
  ...group('PROB', 'Chances written in a column are added up by conditions', 'SUMIFS'),
  ...group(
    'FORECAST.ETS',
    'It finds its seasons in a long series, and a farm has few',
    'FORECAST, or AVERAGEIFS of past seasons',
  ),
  ...group(
    'COMBINA PERMUTATIONA MULTINOMIAL FACTDOUBLE SERIESSUM',
    'No season plan counts so many ways',
    'COMBIN, FACT and POWER',
  ),
  ...group('SEC CSC SECH CSCH', 'It is one divided by another function', '1 / COS, 1 / SIN, 1 / COSH, 1 / SINH'),
  ...group(
    'CEILING.PRECISE ISO.CEILING FLOOR.PRECISE',
    'The sign of a step does not matter here, which is all that these add',
    'CEILING and FLOOR',
  ),
  ...group(
    'CUMIPMT CUMPRINC',
    'The payments of a loan stand in the rows of a sheet, where they are added up',
    'SUM of a column of IPMT or PPMT',
  ),
  ...group(
    'PDURATION RRI FVSCHEDULE ISPMT',
    'It is said by the functions of loans and savings',
    'NPER, RATE, FV and IPMT',
  ),
  ...group(
    'ACCRINT ACCRINTM AMORLINC COUPDAYBS COUPDAYS COUPDAYSNC COUPNCD COUPNUM COUPPCD DISC DURATION INTRATE MDURATION ODDFPRICE ODDFYIELD ODDLPRICE ODDLYIELD PRICE PRICEDISC PRICEMAT RECEIVED TBILLEQ TBILLPRICE TBILLYIELD YIELD YIELDDISC YIELDMAT',
    'A farm does not deal in bonds',
    'XNPV and XIRR for payments on dates',
  ),
  ...group(
    'REGEX REGEXTEST REGEXEXTRACT REGEXREPLACE',
    'Such patterns are a language of their own, and some never end',
    'SEARCH with ? and *, TEXTBEFORE, TEXTAFTER and TEXTSPLIT',
  ),
  ...group('SPLIT', 'A formula gives one value a row', 'TEXTSPLIT, which names the piece'),
  ...group('VALUETOTEXT ARRAYTOTEXT', 'A value joined to a text is written in full', '& and TEXTJOIN'),
  ...group('PERCENTOF', 'A share of a total is a division', 'SUMIFS divided by SUM'),
];

/** The entry of a name, whatever its case; undefined for a name that is none of these. */
export function leftOut(name: string): LeftOut | undefined {
  const wanted = name.toUpperCase();
  return LEFT_OUT.find((entry) => entry.name === wanted);
}
