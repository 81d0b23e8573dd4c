// General functions that hyperformula has too, and in which the engine goes before it: where the two differ, OpenFormula (ODF 1.3
// part 4) or plain arithmetic is on the engine's side. All others stay hyperformula's. Read by engine-functions.ts;
// tests/scratch/both-have.test.ts compares the two function by function.

function names(list: string): readonly string[] {
  return list.split(' ');
}

export const ENGINE_FIRST: ReadonlySet<string> = new Set([
  // Down to the whole number at or below, digits and steps cut off to whole ones, binary dust forgiven: ROUND(1.005; 2) is 1.01
  // (6.17.1 to 6.17.8). Steps of CEILING and FLOOR may be left out.
  ...names('INT ROUND ROUNDUP ROUNDDOWN TRUNC CEILING FLOOR CEILING.MATH FLOOR.MATH MROUND EVEN ODD QUOTIENT MOD'),
  // The whole part is asked (6.13.17, 6.13.23); angles between 0 and pi (6.16.5); more than 1,029 to choose from.
  ...names('ISEVEN ISODD ACOT COMBIN'),
  // Per cent, thousands, names of days and months (6.20.23); places from the beginning of the text (6.20.9); a number of letters cut
  // off to a whole one (6.20.15, 6.20.19); an empty text occurs nowhere (6.20.21); all that can't be printed.
  ...names('TEXT FIND RIGHT MID SUBSTITUTE CLEAN'),
  // Any two days, small letters too (6.10.4); leap days and parts of months (6.10.9, 6.10.10); the last of February (6.10.7); ISO
  // weeks that begin in December (6.10.12). A day that WORKDAY gives is told as one; months in letters are read (6.10.4 takes what the
  // place writes).
  ...names('DATEVALUE DATEDIF EDATE EOMONTH DAYS360 YEARFRAC WEEKDAY WEEKNUM ISOWEEKNUM WORKDAY'),
  // Chances to the last digits, tails and bounds included, and what may be left out (6.18.4 to 6.18.81).
  ...names('BETA.DIST BETADIST BETA.INV BETAINV BINOM.DIST BINOMDIST BINOM.INV CRITBINOM CONFIDENCE.T CHISQ.INV'),
  ...names('CHISQ.INV.RT EXPON.DIST EXPONDIST F.DIST F.DIST.RT F.INV F.INV.RT GAMMA.DIST GAMMADIST GAMMA.INV GAMMAINV'),
  ...names('HYPGEOM.DIST HYPGEOMDIST NORMDIST NORM.INV NORMINV NORM.S.INV POISSON POISSON.DIST T.DIST T.DIST.2T'),
  ...names('T.DIST.RT T.INV T.INV.2T TINV T.TEST TTEST WEIBULL WEIBULL.DIST'),
  // Periods of a loan and of a thing's life (6.12.14, 6.12.23, 6.12.46), rates that pay the loan off.
  ...names('IPMT PPMT RATE IRR MIRR XIRR SYD DB DDB'),
]);
