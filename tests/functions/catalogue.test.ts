// The list of functions as a whole: nothing of the standard's Small group is missing without a reason, names are unique, and every
// entry can be read by a person.

import { HyperFormula } from 'hyperformula';
import { describe, expect, it } from 'vitest';
import { FUNCTIONS, SIGNATURES } from '../../engine/functions/index.ts';
import { LEFT_OUT, leftOut } from '../../engine/functions/left-out.ts';
import { STANDARD } from '../../engine/functions/standard/index.ts';
import { createVocabulary } from '../../engine/units/vocabulary.ts';

/** OpenDocument 1.3 part 4, 2.3.2: the Small group. */
const SMALL =
  `ABS ACOS ASIN ATAN ATAN2 AVERAGE AVERAGEIF CHOOSE COLUMNS COS COUNT COUNTA COUNTBLANK COUNTIF DATE DAVERAGE DAY
DCOUNT DCOUNTA DDB DEGREES DGET DMAX DMIN DPRODUCT DSTDEV DSTDEVP DSUM DVAR DVARP EVEN EXACT EXP FACT FALSE FIND FV
HLOOKUP HOUR IF INDEX INT IRR ISBLANK ISERR ISERROR ISLOGICAL ISNA ISNONTEXT ISNUMBER ISTEXT LEFT LEN LN LOG LOG10 LOWER
MATCH MAX MID MIN MINUTE MOD MONTH N NA NOT NOW NPER NPV ODD OR PI PMT POWER PRODUCT PROPER PV RADIANS RATE REPLACE REPT
RIGHT ROUND ROWS SECOND SIN SLN SQRT STDEV STDEVP SUBSTITUTE SUM SUMIF SYD T TAN TIME TODAY TRIM TRUE TRUNC UPPER VALUE VAR
VARP VLOOKUP WEEKDAY YEAR AND`.split(/\s+/);

/** What a spreadsheet person looks for beyond it. */
const EXPECTED =
  `ROUNDUP ROUNDDOWN CEILING FLOOR MROUND SUMIFS COUNTIFS AVERAGEIFS MINIFS MAXIFS SUMPRODUCT MEDIAN PERCENTILE QUARTILE
RANK STDEV.S STDEV.P VAR.S VAR.P MODE LARGE SMALL CORREL IFS SWITCH IFERROR IFNA XLOOKUP EDATE EOMONTH WEEKNUM ISOWEEKNUM DAYS
NETWORKDAYS WORKDAY TEXT CONCAT CONCATENATE TEXTJOIN NORM.DIST NORM.INV NORM.S.DIST NORM.S.INV NORMDIST NORMINV BINOM.DIST
BINOM.INV BINOMDIST CRITBINOM POISSON POISSON.DIST SLOPE INTERCEPT RSQ STEYX FORECAST CONVERT SIGN COMBIN GCD LCM QUOTIENT
SUMSQ ISEVEN ISODD UNICODE UNICHAR SEARCH`.split(/\s+/);

/** OpenDocument 1.3 part 4, chapter 6, beyond the Small group: what it has for finance, statistics, numbers and texts. */
const LARGE =
  `ACCRINT ACCRINTM AMORLINC COUPDAYBS COUPDAYS COUPDAYSNC COUPNCD COUPNUM COUPPCD CUMIPMT CUMPRINC DB DISC DOLLARDE
DOLLARFR DURATION EFFECT FVSCHEDULE INTRATE IPMT ISPMT MDURATION MIRR NOMINAL ODDFPRICE ODDFYIELD ODDLPRICE ODDLYIELD
PDURATION PPMT PRICE PRICEDISC PRICEMAT RECEIVED RRI TBILLEQ TBILLPRICE TBILLYIELD VDB XIRR XNPV YIELD YIELDDISC YIELDMAT
AVEDEV BETADIST BETAINV BINOMDIST CHISQDIST CHISQINV CONFIDENCE COVAR DEVSQ EXPONDIST FDIST FINV FISHER FISHERINV FREQUENCY
FTEST GAMMADIST GAMMAINV GAUSS GROWTH HYPGEOMDIST KURT LINEST LOGEST LOGINV LOGNORMDIST NEGBINOMDIST PERCENTRANK PERMUT
PERMUTATIONA PROB SKEW SKEWP TINV TREND TRIMMEAN TTEST WEIBULL ZTEST LEGACY.CHIDIST LEGACY.CHIINV LEGACY.CHITEST
LEGACY.FDIST LEGACY.FINV LEGACY.NORMSDIST LEGACY.NORMSINV LEGACY.TDIST BESSELI COMBINA CSC ERF FACTDOUBLE GAMMA GAMMALN
MULTINOMIAL SEC SERIESSUM SQRTPI BASE DECIMAL ROMAN BIN2OCT COMPLEX IMTAN BITAND`.split(/\s+/);

/** What the peer of the differential tests has of its own. */
const ITS_OWN =
  /^HF\.|^ARRAY|POOL$|^VERSION$|^INTERVAL$|^ISBINARY$|^(COVARIANCE[PS]|VARS|STDEVS|WEIBULLDIST|POISSONDIST|LOGNORMINV|TINV2T|TDIST(RT|2T)|F(INV|DIST)RT|CHI(DIST|INV)RT)$/;

describe('the list of functions', () => {
  it('holds the Small group, or says why not and what to use', () => {
    expect(SMALL).toHaveLength(110);
    expect(SMALL.filter((name) => !FUNCTIONS.has(name) && leftOut(name) === undefined)).toEqual([]);
  });

  it('leaves out of the Small group only what looks along a row of headings or at a clock', () => {
    expect(SMALL.filter((name) => !FUNCTIONS.has(name)).sort()).toEqual(['HLOOKUP', 'NOW']);
  });

  it('holds what growers need beyond it', () => {
    expect(EXPECTED.filter((name) => !FUNCTIONS.has(name))).toEqual([]);
  });

  it('holds the rest of OpenFormula and of other spreadsheets, or says why not and what to use', () => {
    const peer = HyperFormula.getRegisteredFunctionNames('enGB').filter((name) => !ITS_OWN.test(name));
    expect([...LARGE, ...peer].filter((name) => !FUNCTIONS.has(name) && leftOut(name) === undefined)).toEqual([]);
  });

  it('has one entry a name', () => {
    const names = STANDARD.map(({ signature }) => signature.name);
    expect(names.filter((name, at) => names.indexOf(name) !== at)).toEqual([]);
    expect(LEFT_OUT.filter(({ name }) => FUNCTIONS.has(name))).toEqual([]);
    const left = LEFT_OUT.map(({ name }) => name);
    expect(left.filter((name, at) => left.indexOf(name) !== at)).toEqual([]);
  });

  it.each(STANDARD.map(({ signature }) => [signature.name, signature] as const))(
    '%s can be read',
    (name, signature) => {
      expect(name).toMatch(/^[A-Z][A-Z0-9.]*$/);
      expect(signature.doc).toMatch(/[.]$/);
      expect(signature.source).toMatch(/^(OpenFormula 6\.\d+\.\d+|common spreadsheet practice)$/);
      expect(signature.repeating).toBeLessThanOrEqual(signature.parameters.length);
      for (const { name: parameter } of signature.parameters) expect(parameter).toMatch(/^[a-z][a-z0-9_]*$/);
      expect(SIGNATURES.get(name)).toBe(signature);
    },
  );

  it('turns answers from the very unit that they are shown in', () => {
    const { find } = createVocabulary({ currency: 'EUR' });
    const turned = [...FUNCTIONS.values()].filter(({ resultUnit }) => resultUnit !== undefined);
    expect(turned.length).toBeGreaterThan(5);
    for (const { signature, resultUnit = '' } of turned) {
      const shown = signature.result.is === 'rule' ? signature.result.rule([]) : undefined;
      if (typeof shown !== 'object' || shown.kind !== 'number') throw new Error(`${signature.name} shows no unit`);
      expect(find(resultUnit), signature.name).toMatchObject({
        numerator: shown.unit.numerator,
        denominator: shown.unit.denominator,
        dimension: shown.unit.dimension,
      });
    }
  });

  it('names in what to use only what exists', () => {
    for (const { use } of LEFT_OUT) {
      const named = use.match(/\b[A-Z][A-Z0-9.]{2,}(?=\b)/g) ?? [];
      expect(
        named.filter((name) => !FUNCTIONS.has(name) && !['CSV', 'GESTEP', 'DELTA', 'ERF', 'GAMMA'].includes(name)),
      ).toEqual([]);
    }
  });
});
