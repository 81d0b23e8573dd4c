// Cases derived from the OpenFormula test collection of the OASIS OpenDocument technical committee
// (openformula-testsuite-20060724.ods): formulas with cells of its fixture written as constants, or as the sheets of
// ../functions/formulas.ts; each under its section of OpenDocument 1.3 part 4. Where typed sheets say a thing another way, `instead`
// keeps the collection's formula. Those that can't apply stand in openformula.not-applied.ts.
//
// Copyright (C) OASIS Open 2006. All Rights Reserved.
//
// This document and translations of it may be copied and furnished to others, and derivative works that comment on or
// otherwise explain it or assist in its implementation may be prepared, copied, published, and distributed, in whole or
// in part, without restriction of any kind, provided that the above copyright notice and this paragraph are included on
// all such copies and derivative works. However, this document itself may not be modified in any way, such as by removing
// the copyright notice or references to OASIS, except as needed for the purpose of developing OASIS specifications, in
// which case the procedures for copyrights defined in the OASIS Intellectual Property Rights document must be followed, or
// as required to translate it into languages other than English.

/** The formula must give an error, or be refused before it runs. */
export const ERROR = Symbol('an error');

export interface Case {
  /** Row in the collection's sheet. */
  readonly row: number;
  readonly formula: string;
  readonly gives: number | string | boolean | typeof ERROR;
  /** Absolute; 1e-12 of its size where absent. */
  readonly within?: number;
  /** The collection's own formula, where ours says it another way. */
  readonly instead?: string;
}

export interface Section {
  readonly section: string;
  readonly cases: readonly Case[];
}

function section(number: string, ...cases: readonly Case[]): Section {
  return { section: number, cases };
}

function of(row: number, formula: string, gives: Case['gives'], more: Pick<Case, 'within' | 'instead'> = {}): Case {
  return { row, formula, gives, ...more };
}

/** What the collection calls a difference too small to matter. */
const EPSILON = 1e-6;

export const SECTIONS: readonly Section[] = [
  // Limits
  section(
    '2.3.1',
    of(44, 'SUM(2;3;2;3;2;3;2;3;2;3;2;3;2;3;2;3;2;3;2;3;2;3;2;3;2;3;2;3;2;3)', 75),
    of(
      45,
      '2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+2+3+1111',
      1961,
    ),
    of(46, 'LEN(REPT("x";2^15-1))', 32767),
  ),
  // Criteria
  section(
    '4.11.8',
    of(53, 'SUMIFS(Stars[TestID]; Stars[Bright Stars]; 4)', 96, {
      instead: '=DSUM([.A18:.I31]; "TestID"; [.B36:.B37])',
    }),
    of(54, 'SUMIFS(Stars[TestID]; Stars[Bright Stars]; "<4")', 4757, {
      instead: '=DSUM([.A18:.I31]; "TestID"; [.G36:.G37])',
    }),
    of(55, 'SUMIFS(Stars[TestID]; Stars[Bright Stars]; 4; Stars[Northern]; TRUE)', 64, {
      instead: '=DSUM([.A18:.I31]; "TestID"; [.B36:.C37])',
    }),
    of(56, 'SUMIFS(Stars[TestID]; Stars[Bright Stars]; 4) + SUMIFS(Stars[TestID]; Stars[Bright Stars]; "<2")', 737, {
      instead: '=DSUM([.A18:.I31]; "TestID"; [.B36:.B38])',
    }),
    of(
      57,
      'SUMIFS(Stars[TestID]; Stars[Bright Stars]; 4; Stars[Northern]; TRUE) + SUMIFS(Stars[TestID]; Stars[Bright Stars]; "<2"; Stars[Northern]; TRUE)',
      193,
      { instead: '=DSUM([.A18:.I31]; "TestID"; [.B36:.C38])' },
    ),
    of(
      58,
      'SUMIFS(Stars[TestID]; Stars[Bright Stars]; 4; Stars[Northern]; TRUE; Stars[Constellation]; "Ursa Major")',
      0,
      { instead: '=DSUM([.A18:.I31]; "TestID"; [.B36:.D38])' },
    ),
    of(59, 'SUMIFS(Stars[TestID]; Stars[Constellation]; "Ursa Major")', 2048, {
      instead: '=DSUM([.A18:.I31]; "TestID"; [.D36:.D37])',
    }),
    of(60, 'SUMIFS(Stars[TestID]; Stars[Date]; ">1950-01-01")', 3679, {
      instead: '=DSUM([.A18:.I31]; "TestID"; [.H36:.H37])',
    }),
    of(61, 'SUMIFS(Stars[TestID]; Stars[Decl]; "<0")', 1580, { instead: '=DSUM([.A18:.I31]; "TestID"; [.E36:.E37])' }),
    of(62, 'SUMIFS(Stars[TestID]; Stars[Rev]; "<=7")', 8128, { instead: '=DSUM([.A18:.I31]; "TestID"; [.F36:.F37])' }),
    of(
      63,
      'SUMIFS(Stars[TestID]; Stars[Bright Stars]; "<4") + SUMIFS(Stars[TestID]; Stars[Bright Stars]; ">=8")',
      6037,
      { instead: '=DSUM([.A18:.I31]; "TestID"; [.G36:.G38])' },
    ),
    of(64, 'SUMIFS(Stars[TestID]; Stars[Constellation]; "URSA MAJOR")', 2048, {
      instead: '=DSUM([.A18:.I31]; "TestID"; [.H38:.H39])',
    }),
  ),
  // Conversion to Number
  section(
    '6.3.5',
    of(66, 'N(1=1)+2', 3, { instead: '=(1=1)+2' }),
    of(67, '3+N(TRUE())', 4, { instead: '=[.B5]+[.B6]' }),
  ),
  // Infix Operator "+"
  section('6.4.2', of(83, '1+2', 3), of(84, '2+3', 5)),
  // Infix Operator "-"
  section(
    '6.4.3',
    of(85, '3-1', 2),
    of(86, '3-2', 1),
    of(87, '5 - - 2', 7),
    of(88, '5--2', 7),
    of(89, '3-2+3', 4),
    of(90, 'DAYS(DATE(2006;1;31); DATE(2005;1;31)) / (1 day)', 365, { instead: '=[.C8]-[.C7]' }),
  ),
  // Infix Operator "*"
  section('6.4.4', of(91, '3*4', 12), of(92, '2*3', 6), of(93, '2+3*4', 14)),
  // Infix Operator "/"
  section(
    '6.4.5',
    of(94, '6/3', 2),
    of(95, '144/3/2', 24),
    of(96, '6/3*2', 4),
    of(97, '2+6/2', 5),
    of(98, '5/2', 2.5),
    of(99, '1/0', ERROR),
  ),
  // Infix Operator "^"
  section(
    '6.4.6',
    of(100, '2^3', 8),
    of(101, '9^0.5', 3),
    of(102, '(-5)^3', -125),
    of(103, '4^-1', 0.25),
    of(104, '5^0', 1),
    of(105, '0^5', 0),
    of(106, '2+3*4^2', 50),
    of(107, '-2^2', 4),
    of(108, '(2^3)^2', 64),
    of(109, '2^(3^2)', 512),
    of(110, '2^3^2', 64),
  ),
  // Infix Operator "="
  section(
    '6.4.7',
    of(111, '1=1', true),
    of(112, '2=2', true),
    of(113, '1=0', false),
    of(114, '3=3.0001', false),
    of(115, '"Hi"="Bye"', false),
    of(116, 'FALSE()=FALSE()', true),
    of(117, 'TRUE()=FALSE()', false),
    of(119, 'ISNA(NA()=NA())', true),
    of(120, '"Hi"="HI"', true),
  ),
  // Infix Operator "<>"
  section('6.4.8', of(121, '1<>1', false), of(122, '1<>2', true), of(124, '"Hi"<>"HI"', false)),
  // Infix Operator Ordered Comparison ("<", "<=", ">", ">=")
  section(
    '6.4.9',
    of(125, '5<6', true),
    of(126, '5<=6', true),
    of(127, '5>6', false),
    of(128, '5>=6', false),
    of(129, '"A"<"B"', true),
    of(130, '"a"<"B"', true),
    of(131, '"AA">"A"', true),
  ),
  // Infix Operator Range (":")
  section('6.4.11', of(132, 'SUM(Two[B])', 5)),
  // Infix Operator "&"
  section(
    '6.4.10',
    of(135, '"Hi " & "there"', 'Hi there'),
    of(136, '"H" & ""', 'H'),
    of(137, '-5&"b"', '-5b'),
    of(138, '3&2-1', '31'),
  ),
  // Postfix Operator "%"
  section(
    '6.4.14',
    of(145, '50%', 0.5),
    of(146, '20+50%', 20.5),
    of(147, '3^200%', 9),
    of(148, '2%', 0.02, { within: EPSILON }),
  ),
  // Prefix Operator "+"
  section('6.4.15', of(149, '+5', 5)),
  // Prefix Operator "-"
  section('6.4.16', of(151, '-2', -2), of(152, '-2=(0-2)', true)),
  // DAVERAGE
  section(
    '6.9.2',
    of(153, 'AVERAGEIFS(Stars[TestID]; Stars[Bright Stars]; 4)', 48, {
      instead: '=DAVERAGE([.A18:.I31]; "TestID"; [.B36:.B37])',
    }),
  ),
  // DCOUNT
  section(
    '6.9.3',
    of(154, 'COUNTIFS(Stars[Bright Stars]; 4)', 2, { instead: '=DCOUNT([.A18:.I31]; "Bright Stars"; [.B36:.B37])' }),
  ),
  // DCOUNTA
  section(
    '6.9.4',
    of(155, 'COUNTIFS(Stars[Bright Stars]; 4)', 2, { instead: '=DCOUNTA([.A18:.I31]; "Bright Stars"; [.B36:.B37])' }),
  ),
  // DGET
  section(
    '6.9.5',
    of(156, 'XLOOKUP("Ursa Major"; Stars[Constellation]; Stars[TestID])', 2048, {
      instead: '=DGET([.A18:.I31]; "TestID"; [.D36:.D37])',
    }),
  ),
  // DMAX
  section(
    '6.9.6',
    of(158, 'MAXIFS(Stars[TestID]; Stars[Bright Stars]; 4)', 64, {
      instead: '=DMAX([.A18:.I31]; "TestID"; [.B36:.B37])',
    }),
  ),
  // DMIN
  section(
    '6.9.7',
    of(159, 'MINIFS(Stars[TestID]; Stars[Bright Stars]; 4)', 32, {
      instead: '=DMIN([.A18:.I31]; "TestID"; [.B36:.B37])',
    }),
  ),
  // DSUM
  section(
    '6.9.11',
    of(163, 'SUMIFS(Stars[TestID]; Stars[Bright Stars]; 4)', 96, {
      instead: '=DSUM([.A18:.I31]; "TestID"; [.B36:.B37])',
    }),
  ),
  // DDB
  section('6.12.14', of(166, 'DDB(4000;500;4;2)', 1000), of(167, 'DDB(4000;500;4;2;2)', 1000)),
  // FV
  section('6.12.20', of(168, 'FV(10%;12;-100;100)', 1824.59, { within: 0.01 })),
  // IRR
  section('6.12.24', of(169, 'IRR(Three[Decl])', 0.418787000165341, { within: 1e-5 })),
  // NPER
  section(
    '6.12.29',
    of(170, 'NPER(5%;-100;1000)', 14.2067, { within: 0.001 }),
    of(171, 'NPER(5%;-100;1000;100)', 15.2067, { within: 0.001 }),
    of(172, 'NPER(5%;-100;1000;100;1)', 14.2067, { within: 0.001 }),
    of(173, 'NPER(0;-100;1000)', 10),
    of(174, 'NPER(-1%;-100;1000)', 9.483283066, { within: 0.001 }),
  ),
  // NPV
  section(
    '6.12.30',
    of(175, 'NPV(100%;4;5;7)', 4.125),
    of(176, 'NPV(100%;Three[C])', 4.125),
    of(177, 'NPV(10%;100;200)', 256.198347107438, { within: 0.001 }),
  ),
  // PMT
  section(
    '6.12.36',
    of(178, 'PMT(5%;12;1000)', -112.82541, { within: 0.001 }),
    of(179, 'PMT(5%;12;1000;100)', -119.10795, { within: 0.001 }),
    of(180, 'PMT(5%;12;1000;100;1)', -113.43614, { within: 0.001 }),
    of(181, 'PMT(0;10;1000)', -100),
  ),
  // PV
  section('6.12.41', of(182, 'PV(10%;12;-100;100)', 649.51, { within: 0.01 })),
  // RATE
  section(
    '6.12.42',
    of(183, 'RATE(12;-100;1000)', 0.0292285, { within: 0.001 }),
    of(184, 'RATE(12;-100;1000;100)', 0.01623133, { within: 0.001 }),
    of(185, 'RATE(12;-100;1000;100;1)', 0.01996455, { within: 0.001 }),
    of(186, 'RATE(12;-100;1000;100;1;1%)', 0.01996455, { within: 0.001 }),
    of(187, 'RATE(0;-100;1000)', ERROR),
  ),
  // SLN
  section('6.12.45', of(188, 'SLN(4000;500;4)', 875)),
  // SYD
  section('6.12.46', of(189, 'SYD(4000;500;4;2)', 1050)),
  // COUNT
  section('6.13.6', of(193, 'COUNT(1;2;3)', 3), of(194, 'COUNT(Two[B])', 2), of(195, 'COUNT(Two[B];Two[B])', 4)),
  // COUNTA
  section('6.13.7', of(203, 'COUNTA("1";2;1/0)', 3)),
  // COUNTIF
  section('6.13.9', of(207, 'COUNTIF(Two[B];">2.5")', 1), of(209, 'COUNTIF("";2)', ERROR)),
  // ISBLANK
  section(
    '6.13.14',
    of(214, 'ISBLANK(1)', false),
    of(215, 'ISBLANK("")', false),
    of(216, 'ISBLANK(IF(FALSE;1))', true),
    of(217, 'ISBLANK("Hello")', false),
  ),
  // ISERR
  section(
    '6.13.15',
    of(218, 'ISERR(1/0)', true),
    of(219, 'ISERR(NA())', false),
    of(220, 'ISERR("#N/A")', false),
    of(221, 'ISERR(1)', false),
  ),
  // ISERROR
  section(
    '6.13.16',
    of(222, 'ISERROR(1/0)', true),
    of(223, 'ISERROR(NA())', true),
    of(224, 'ISERROR("#N/A")', false),
    of(225, 'ISERROR(1)', false),
  ),
  // ISLOGICAL
  section(
    '6.13.19',
    of(226, 'ISLOGICAL(TRUE())', true),
    of(227, 'ISLOGICAL(FALSE())', true),
    of(228, 'ISLOGICAL("TRUE")', false),
  ),
  // ISNONTEXT
  section(
    '6.13.21',
    of(229, 'ISNONTEXT(1)', true),
    of(230, 'ISNONTEXT(TRUE())', true),
    of(231, 'ISNONTEXT("1")', false),
    of(232, 'ISNONTEXT("Hello")', false),
    of(233, 'ISNONTEXT((1/0))', true),
    of(234, 'ISNONTEXT(IF(FALSE;1))', true),
  ),
  // ISNUMBER
  section('6.13.22', of(235, 'ISNUMBER(1)', true), of(236, 'ISNUMBER("1")', false)),
  // ISTEXT
  section('6.13.25', of(237, 'ISTEXT(1)', false), of(238, 'ISTEXT("1")', true)),
  // N
  section('6.13.26', of(239, 'N(6)', 6), of(240, 'N(TRUE())', 1), of(241, 'N(FALSE())', 0)),
  // NA
  section('6.13.27', of(242, 'ISERROR(NA())', true), of(243, 'ISNA(NA())', true), of(244, 'ISNA(5+NA())', true)),
  // VALUE
  section(
    '6.13.34',
    of(248, 'VALUE("6")', 6),
    of(249, 'VALUE("1E5")', 100000),
    of(250, 'VALUE("200%")', 2),
    of(251, 'VALUE("1.5")', 1.5),
    of(252, 'VALUE("7 1/4")', 7.25),
    of(253, 'VALUE("0 1/2")', 0.5),
    of(254, 'VALUE("7")', 7),
    of(255, 'TIMEVALUE("00:00") / (1 day)', 0, { instead: '=VALUE("00:00")' }),
    of(256, 'TIMEVALUE("02:00") / (1 day) - 2/24', 0, { within: EPSILON, instead: '=VALUE("02:00")-2/24' }),
    of(257, 'TIMEVALUE("2:03") / (1 day) - 2/24 - 3/(24*60)', 0, {
      within: EPSILON,
      instead: '=VALUE("2:03")-(2/24)-(3/(24*60))',
    }),
    of(258, 'TIMEVALUE("2:03:05") / (1 day) - 2/24 - 3/(24*60) - 5/(24*60*60)', 0, {
      within: EPSILON,
      instead: '=VALUE("2:03:05") -2/24-3/(24*60) -5/(24*60*60)',
    }),
    of(259, 'DATEVALUE("3/32/2006")', ERROR, { instead: '=VALUE("3/32/2006")' }),
    of(260, 'DATEVALUE("2/29/2006")', ERROR, { instead: '=VALUE("2/29/2006")' }),
    of(262, 'DATEVALUE("2005-01-02") = DATE(2005;1;2)', true, { instead: '=VALUE("2005-01-02")=DATE(2005;1;2)' }),
    of(264, 'DATEVALUE("Oct 29, 2006") = DATE(2006;10;29)', true, {
      instead: '=VALUE("Oct 29, 2006")=DATE(2006;10;29)',
    }),
    of(265, 'DATEVALUE("29 Oct 2006") = DATE(2006;10;29)', true, { instead: '=VALUE("29 Oct 2006")=DATE(2006;10;29)' }),
    of(266, 'DATEVALUE("October 29, 2006") = DATE(2006;10;29)', true, {
      instead: '=VALUE("October 29, 2006")=DATE(2006;10;29)',
    }),
    of(267, 'DATEVALUE("29 October 2006") = DATE(2006;10;29)', true, {
      instead: '=VALUE("29 October 2006")=DATE(2006;10;29)',
    }),
  ),
  // CHOOSE
  section(
    '6.14.3',
    of(288, 'CHOOSE(3;"Apple";"Orange";"Grape";"Perry")', 'Grape'),
    of(289, 'CHOOSE(0;"Apple";"Orange";"Grape";"Perry")', ERROR),
    of(290, 'CHOOSE(5;"Apple";"Orange";"Grape";"Perry")', ERROR),
    of(291, 'CHOOSE(2;SUM(Two[B]);SUM(3))', 3),
  ),
  // HLOOKUP
  section('6.14.5', of(293, 'INDEX(Stars[Rev]; 1)', 13, { instead: '=HLOOKUP("Rev"; [.B18:.I31];2)' })),
  // INDEX
  section('6.14.6', of(295, 'INDEX(Two[B]; 1)', 2, { instead: '=INDEX([.B3:.C5];2;1)' })),
  // VLOOKUP
  section(
    '6.14.12',
    of(297, 'XLOOKUP("Ursa Major"; Stars[Constellation]; Stars[Bright Stars])', 6, {
      instead: '=VLOOKUP("Ursa Major"; [.B19:.I31];2)',
    }),
    of(298, 'XLOOKUP("Ursa Major"; Stars[Constellation]; Stars[Abbrev])', 'Uma', {
      instead: '=VLOOKUP("Ursa Major"; [.B19:.I31];4)',
    }),
    of(299, 'XLOOKUP(2; Stars[Bright Stars]; Stars[Abbrev])', 'Cmi', { instead: '=VLOOKUP(2; [.C19:.I31];3)' }),
    of(300, 'XLOOKUP("NoSuchConstellation"; Stars[Constellation]; Stars[Abbrev])', ERROR, {
      instead: '=VLOOKUP("NoSuchConstellation"; [.B19:.I31];4)',
    }),
  ),
  // AND
  section(
    '6.15.2',
    of(301, 'AND(FALSE();FALSE())', false),
    of(302, 'AND(FALSE();TRUE())', false),
    of(303, 'AND(TRUE();FALSE())', false),
    of(304, 'AND(TRUE();TRUE())', true),
    of(305, 'AND(TRUE();NA())', ERROR),
    of(308, 'AND(TRUE();TRUE();TRUE())', true),
    of(309, 'AND(TRUE())', true),
  ),
  // FALSE
  section('6.15.3', of(310, 'FALSE()', false)),
  // IF
  section(
    '6.15.4',
    of(311, 'IF(FALSE();7;8)', 8),
    of(312, 'IF(TRUE();7;8)', 7),
    of(313, 'IF(TRUE();"HI";"8")', 'HI', { instead: '=IF(TRUE();"HI";8)' }),
    of(317, 'IF(TRUE();2;8)', 2),
    of(318, 'IF(TRUE();2+5;8)', 7),
    of(319, 'IF("x";7;8)', ERROR),
    of(320, 'IF("1";7;8)', ERROR),
    of(321, 'IF("";7;8)', ERROR),
    of(324, 'IF(TRUE();4;1/0)', 4),
    of(325, 'IF(FALSE();1/0;5)', 5),
  ),
  // NOT
  section('6.15.7', of(326, 'NOT(FALSE())', true), of(327, 'NOT(TRUE())', false)),
  // OR
  section(
    '6.15.8',
    of(328, 'OR(FALSE();FALSE())', false),
    of(329, 'OR(FALSE();TRUE())', true),
    of(330, 'OR(TRUE();FALSE())', true),
    of(331, 'OR(TRUE();TRUE())', true),
    of(332, 'OR(FALSE();NA())', ERROR),
    of(333, 'OR(FALSE();FALSE();TRUE())', true),
    of(334, 'OR(TRUE())', true),
  ),
  // TRUE
  section('6.15.9', of(335, 'TRUE()', true)),
  // ABS
  section('6.16.2', of(336, 'ABS(-4)', 4), of(337, 'ABS(4)', 4)),
  // ACOS
  section(
    '6.16.3',
    of(338, 'ACOS(SQRT(2)/2)*4/PI()', 1),
    of(339, 'ACOS(N(TRUE()))', 0, { instead: '=ACOS(TRUE())' }),
    of(340, 'ACOS(-1.0)/PI()', 1),
    of(341, 'ACOS(2.0)', ERROR),
  ),
  // ACOSH
  section('6.16.4', of(342, 'ACOSH(1)', 0), of(343, 'ACOSH(2)', 1.316957897, { within: EPSILON })),
  // ACOT
  section('6.16.5', of(344, 'ACOT(0)-PI()/2', 0, { within: EPSILON })),
  // ACOTH
  section('6.16.6', of(345, 'ACOTH(2)', 0.549306144, { within: EPSILON })),
  // ASIN
  section(
    '6.16.7',
    of(346, 'ASIN(SQRT(2)/2)*4/PI()', 1),
    of(347, 'ASIN(N(TRUE()))*2/PI()', 1, { instead: '=ASIN(TRUE())*2/PI()' }),
    of(348, 'ASIN(-1)*2/PI()', -1),
    of(349, 'ASIN(2)', ERROR),
  ),
  // ASINH
  section('6.16.8', of(350, 'ASINH(0)', 0), of(351, 'ASINH(1)', 0.881373587, { within: EPSILON })),
  // ATAN
  section(
    '6.16.9',
    of(352, 'ATAN(1)*4/PI()', 1, { within: EPSILON }),
    of(353, 'ATAN(-1.0e16)', -1.570796, { within: 0.0001 }),
  ),
  // ATAN2
  section(
    '6.16.10',
    of(354, 'ATAN2(1;1)*4/PI()', 1, { within: EPSILON }),
    of(355, 'ATAN2(1;-1)*4/PI()', -1, { within: EPSILON }),
    of(356, 'ATAN2(-1;1)*4/PI()', 3, { within: EPSILON }),
    of(357, 'ATAN2(-1;-1)*4/PI()', -3, { within: EPSILON }),
    of(358, 'SIGN(ATAN2(-1.0;0.001))', 1),
    of(359, 'SIGN(ATAN2(-1.0;-0.001))', -1),
    of(360, 'ATAN2(-1.0;0)/PI()', 1, { within: EPSILON }),
  ),
  // ATANH
  section('6.16.11', of(361, 'ATANH(0)', 0), of(362, 'ATANH(0.5)', 0.549306144, { within: EPSILON })),
  // AVERAGE
  section('6.18.3', of(363, 'AVERAGE(2;4)', 3)),
  // CEILING
  section(
    '6.17.1',
    of(368, 'CEILING(2; 1)', 2),
    of(369, 'CEILING(2; 3)', 3),
    of(370, 'CEILING(2.5; 1)', 3),
    of(371, 'CEILING(2.5; 2)', 4),
    of(372, 'CEILING(2.5; 2.2)', 4.4),
    of(373, 'CEILING(-2.5; -1)', -2),
  ),
  // COMBIN
  section('6.16.16', of(374, 'COMBIN(5;3)', 10), of(375, 'COMBIN(6;3)', 20), of(376, 'COMBIN(42;3)', 11480)),
  // COS
  section('6.16.19', of(377, 'COS(PI()/4)*2/SQRT(2)', 1), of(378, 'COS(PI()/2)', 0, { within: EPSILON })),
  // COSH
  section(
    '6.16.20',
    of(379, 'COSH(0)', 1),
    of(380, 'COSH(1)', 1.5430806348, { within: EPSILON }),
    of(381, 'COSH(EXP(1))', 7.61012513866, { within: EPSILON }),
  ),
  // COT
  section(
    '6.16.21',
    of(382, 'COT(PI()/4.0)', 1, { within: EPSILON }),
    of(383, 'COT(PI()/2.0)', 0, { within: EPSILON }),
  ),
  // COTH
  section(
    '6.16.22',
    of(384, 'COTH(1)', 1.313035285, { within: EPSILON }),
    of(385, 'COTH(EXP(1))', 1.00874693, { within: EPSILON }),
  ),
  // DEGREES
  section('6.16.25', of(386, 'DEGREES(PI())', 180)),
  // EVEN
  section(
    '6.16.30',
    of(396, 'EVEN(6)', 6),
    of(397, 'EVEN(-4)', -4),
    of(398, 'EVEN(1)', 2),
    of(399, 'EVEN(0.3)', 2),
    of(400, 'EVEN(-1)', -2),
    of(401, 'EVEN(-0.3)', -2),
    of(402, 'EVEN(0)', 0),
  ),
  // EXP
  section(
    '6.16.31',
    of(403, 'EXP(0)', 1),
    of(404, 'EXP(LN(2))', 2),
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: the collection's own digits
    of(405, 'EXP(1)', 2.718281828459045, { within: EPSILON }),
  ),
  // FACT
  section(
    '6.16.32',
    of(406, 'FACT(0)', 1),
    of(407, 'FACT(1)', 1),
    of(408, 'FACT(2)', 2),
    of(409, 'FACT(3)', 6),
    of(410, 'FACT(-1)', ERROR),
  ),
  // FLOOR
  section(
    '6.17.3',
    of(411, 'FLOOR(2; 1)', 2),
    of(412, 'FLOOR(2.5; 1)', 2),
    of(413, 'FLOOR(5; 2)', 4),
    of(414, 'FLOOR(5; 2.2)', 4.4),
    of(415, 'FLOOR(-2.5;1)', ERROR),
  ),
  // GCD
  section(
    '6.16.36',
    of(420, 'GCD(5;15;25)', 5),
    of(421, 'GCD(2;3)', 1),
    of(422, 'GCD(18;24)', 6),
    of(423, 'GCD(18.1;24.1)', 6),
    of(424, 'GCD(18.9;24.9)', 6),
    of(425, 'GCD(7)', 7),
  ),
  // INT
  section(
    '6.17.2',
    of(426, 'INT(2)', 2),
    of(427, 'INT(-3)', -3),
    of(428, 'INT(1.2)', 1),
    of(429, 'INT(1.7)', 1),
    of(430, 'INT(-1.2)', -2),
    of(431, 'INT((1/3)*3)', 1),
  ),
  // LCM
  section(
    '6.16.38',
    of(432, 'LCM(5;15;25)', 75),
    of(433, 'LCM(2;3)', 6),
    of(434, 'LCM(18;12)', 36),
    of(435, 'LCM(18.1;12.1)', 36),
    of(436, 'LCM(18.9;12.9)', 36),
    of(437, 'LCM(7)', 7),
  ),
  // LN
  section(
    '6.16.39',
    of(438, 'LN(1)', 0),
    of(439, 'LN(EXP(1))', 1),
    of(440, 'LN(0)', ERROR),
    of(441, 'LN("Hello")', ERROR),
  ),
  // LOG
  section(
    '6.16.40',
    of(442, 'LOG(1; 10)', 0),
    of(443, 'LOG(1;EXP(1))', 0),
    of(444, 'LOG(10;10)', 1),
    of(445, 'LOG(10)', 1),
    of(446, 'LOG(8*8*8;8)', 3),
    of(447, 'LOG(0;10)', ERROR),
  ),
  // LOG10
  section(
    '6.16.41',
    of(448, 'LOG10(1)', 0),
    of(449, 'LOG10(10)', 1),
    of(450, 'LOG10(100)', 2),
    of(451, 'LOG10(0)', ERROR),
    of(452, 'LOG10("H")', ERROR),
  ),
  // MAX
  section('6.18.45', of(453, 'MAX(2;4;1;-8)', 4), of(454, 'MAX(Two[B])', 3), of(455, 'ISNA(MAX(NA()))', true)),
  // MIN
  section('6.18.48', of(466, 'MIN(2;4;1;-8)', -8), of(467, 'MIN(Two[B])', 2), of(469, 'MIN("a")', ERROR)),
  // MOD
  section(
    '6.16.42',
    of(477, 'MOD(10;3)', 1),
    of(478, 'MOD(2;8)', 2),
    of(479, 'MOD(5.5;2.5)', 0.5),
    of(480, 'MOD(-2;3)', 1),
    of(481, 'MOD(2;-3)', -1),
    of(482, 'MOD(-2;-3)', -2),
    of(483, 'MOD(10;0)', ERROR),
  ),
  // ODD
  section(
    '6.16.44',
    of(484, 'ODD(5)', 5),
    of(485, 'ODD(-5)', -5),
    of(486, 'ODD(2)', 3),
    of(487, 'ODD(0.3)', 1),
    of(488, 'ODD(-2)', -3),
    of(489, 'ODD(-0.3)', -1),
    of(490, 'ODD(0)', 1),
  ),
  // PI
  section(
    '6.16.45',
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: the collection's own digits
    of(491, 'PI()', 3.141592653589793, { within: EPSILON }),
  ),
  // POWER
  section('6.16.46', of(492, 'POWER(10;0)', 1), of(493, 'POWER(2;8)', 256)),
  // PRODUCT
  section(
    '6.16.47',
    of(494, 'PRODUCT(2;3;4)', 24),
    of(495, 'PRODUCT(N(TRUE());2;3)', 6, { instead: '=PRODUCT(TRUE();2;3)' }),
    of(496, 'PRODUCT(Two[B])', 6),
  ),
  // QUOTIENT
  section(
    '6.16.48',
    of(499, 'QUOTIENT(10;5)', 2),
    of(500, 'QUOTIENT(14;5)', 2),
    of(501, 'QUOTIENT(-204;-23)', 8),
    of(502, 'QUOTIENT(-45;8)', -5),
    of(503, 'QUOTIENT(24;-5)', -4),
    of(504, 'QUOTIENT(21;-5)', -4),
    of(505, 'QUOTIENT(-14;5)', -2),
    of(506, 'QUOTIENT(5;0)', ERROR),
  ),
  // RADIANS
  section('6.16.49', of(507, 'RADIANS(180)/PI()', 1)),
  // ROUND
  section(
    '6.17.5',
    of(510, 'ROUND(10.1; 0)', 10),
    of(511, 'ROUND(9.8;0)', 10),
    of(512, 'ROUND(0.5; 0)', 1),
    of(513, 'ROUND(1/3;0)', 0),
    of(514, 'ROUND(1/3;1)', 0.3),
    of(515, 'ROUND(1/3;2)', 0.33),
    of(516, 'ROUND(1/3;2.9)', 0.33),
    of(517, 'ROUND(5555;-1)', 5560),
    of(518, 'ROUND(-1.1; 0)', -1),
    of(519, 'ROUND(-1.5; 0)', -2),
    of(520, 'ROUND(-1.5)', -2),
    of(521, 'ROUND(1.1)', 1),
    of(522, 'ROUND(9.8)', 10),
  ),
  // ROUNDDOWN
  section('6.17.6', of(524, 'ROUNDDOWN(1;0)', 1), of(525, 'ROUNDDOWN(1)', 1), of(527, 'ROUNDDOWN(9;0)', 9)),
  // ROUNDUP
  section(
    '6.17.7',
    of(531, 'ROUNDUP(1.1;0)', 2),
    of(532, 'ROUNDUP(1.9;0)', 2),
    of(533, 'ROUNDUP(1)', 1),
    of(535, 'ROUNDUP(9;0)', 9),
  ),
  // SIGN
  section('6.16.54', of(538, 'SIGN(-4)', -1), of(539, 'SIGN(4)', 1), of(540, 'SIGN(0)', 0)),
  // SIN
  section(
    '6.16.55',
    of(541, 'SIN(PI()/4.0)*2/SQRT(2)', 1, { within: EPSILON }),
    of(542, 'SIN(PI()/2.0)', 1, { within: EPSILON }),
  ),
  // SINH
  section(
    '6.16.56',
    of(543, 'SINH(0)', 0),
    of(544, 'SINH(1)', 1.1752011936, { within: EPSILON }),
    of(545, 'SINH(EXP(1))', 7.5441371028, { within: EPSILON }),
  ),
  // SQRT
  section('6.16.58', of(546, 'SQRT(4)', 2), of(547, 'SQRT(-4)', ERROR)),
  // SQRTPI
  section(
    '6.16.59',
    of(548, 'SQRTPI(1)', 1.77245385, { within: EPSILON }),
    of(549, 'SQRTPI(2)', 2.5066282746, { within: EPSILON }),
    of(550, 'SQRTPI(-4)', ERROR),
  ),
  // SUM
  section(
    '6.16.61',
    of(551, 'SUM(1;2;3)', 6),
    of(552, 'SUM(N(TRUE());2;3)', 6, { instead: '=SUM(TRUE();2;3)' }),
    of(553, 'SUM(Two[B])', 5),
  ),
  // SUMIF
  section('6.16.62', of(554, 'SUMIF(Two[B];">2.5")', 3), of(556, 'SUMIF("";2)', ERROR)),
  // TAN
  section('6.16.69', of(560, 'TAN(PI()/4.0)', 1, { within: EPSILON })),
  // TANH
  section(
    '6.16.70',
    of(561, 'TANH(0)', 0),
    of(562, 'TANH(1)', 0.761594155955765, { within: EPSILON }),
    of(563, 'TANH(-1)', -0.761594155955765, { within: EPSILON }),
    of(564, 'TANH(EXP(1))', 0.9913289158, { within: EPSILON }),
  ),
  // TRUNC
  section(
    '6.17.8',
    of(565, 'TRUNC(10.1)', 10),
    of(566, 'TRUNC(0.5)', 0),
    of(567, 'TRUNC(1/3;0)', 0),
    of(568, 'TRUNC(1/3;1)', 0.3),
    of(569, 'TRUNC(1/3;2)', 0.33),
    of(570, 'TRUNC(1/3;2.9)', 0.33),
    of(571, 'TRUNC(5555;-1)', 5550),
    of(572, 'TRUNC(-1.1)', -1),
    of(573, 'TRUNC(-1.5)', -1),
  ),
  // AVEDEV
  section('6.18.2', of(574, 'AVEDEV(1;2;3;4)', 1)),
  // CORREL
  section('6.18.17', of(575, 'CORREL(Four[B];Four[B])', 1), of(576, 'CORREL(Four[B];Four[C])', -1)),
  // LARGE
  section(
    '6.18.40',
    of(579, 'LARGE(Three[B];1)', 3),
    of(580, 'LARGE(Three[B];3)', 1),
    of(581, 'LARGE(Three[B];4)', ERROR),
  ),
  // SMALL
  section(
    '6.18.70',
    of(582, 'SMALL(Three[B];1)', 1),
    of(583, 'SMALL(Three[B];3)', 3),
    of(584, 'SMALL(Three[B];4)', ERROR),
  ),
  // STDEV
  section('6.18.72', of(585, 'STDEV(2;4)/SQRT(2)', 1), of(586, 'STDEV(Two[B])*SQRT(2)', 1), of(588, 'STDEV(1)', ERROR)),
  // STDEVP
  section('6.18.74', of(589, 'STDEVP(2;4)', 1), of(590, 'STDEVP(Two[B])*2', 1), of(592, 'STDEVP(1)', 0)),
  // VAR
  section('6.18.82', of(593, 'VAR(2;4)', 2), of(594, 'VAR(Two[B])*2', 1), of(596, 'VAR(1)', ERROR)),
  // VARP
  section('6.18.84', of(597, 'VARP(2;4)', 1), of(598, 'VARP(Two[B])*4', 1)),
  // CHAR
  section('6.20.3', of(614, 'CHAR(65)', 'A'), of(615, 'LEN(CHAR(10))', 1)),
  // CLEAN
  section(
    '6.20.4',
    of(616, 'CLEAN("Text")', 'Text'),
    of(617, 'CLEAN(CHAR(7)&"Tex" & CHAR(8) & "t" & CHAR(9))', 'Text'),
    of(618, 'CLEAN("Hi there")', 'Hi there'),
  ),
  // CODE
  section('6.20.5', of(619, 'CODE("A")', 65), of(620, 'CODE("0")>0', true), of(621, 'CODE("Text")=CODE("T")', true)),
  // CONCATENATE
  section(
    '6.20.6',
    of(622, 'CONCATENATE("Hi "; "there")', 'Hi there'),
    of(623, 'CONCATENATE("A"; "B"; "C")', 'ABC'),
    of(624, 'CONCATENATE(2; 3)', '23'),
  ),
  // EXACT
  section('6.20.8', of(625, 'EXACT("A";"A")', true), of(626, 'EXACT("A";"a")', false)),
  // FIND
  section(
    '6.20.9',
    of(634, 'FIND("b";"abcabc")', 2),
    of(635, 'FIND("b";"abcabcabc"; 3)', 5),
    of(636, 'FIND("b";"ABC";1)', ERROR),
  ),
  // LEFT
  section(
    '6.20.12',
    of(637, 'LEFT("Hello";2)', 'He'),
    of(638, 'LEFT("Hello")', 'H'),
    of(639, 'LEFT("Hello";20)', 'Hello'),
    of(640, 'LEFT("Hello";0)', ''),
    of(641, 'LEFT("";4)', ''),
    of(642, 'LEN(LEFT("xxx";-0.5))', ERROR),
    of(643, 'LEN(LEFT("xxx";2^15-1))', 3),
  ),
  // LEN
  section(
    '6.20.13',
    of(644, 'LEN("Hi There")', 8),
    of(645, 'LEN("")', 0),
    of(646, 'LEN(55 & "")', 2, { instead: '=LEN(55)' }),
  ),
  // LOWER
  section('6.20.14', of(647, 'LOWER("HELLObc7")', 'hellobc7')),
  // MID
  section('6.20.15', of(648, 'MID("123456789";5;3)', '567'), of(649, 'MID("123456789";20;3)', '')),
  // PROPER
  section(
    '6.20.16',
    of(650, 'PROPER("hello there")', 'Hello There'),
    of(651, 'PROPER("HELLO THERE")', 'Hello There'),
    of(652, 'PROPER("HELLO.THERE")', 'Hello.There'),
  ),
  // REPLACE
  section(
    '6.20.17',
    of(653, 'REPLACE("123456789";5;3;"Q")', '1234Q89'),
    of(654, 'REPLACE("123456789";5;0;"Q")', '1234Q56789'),
  ),
  // REPT
  section(
    '6.20.18',
    of(655, 'REPT("X";3)', 'XXX'),
    of(656, 'REPT("XY";2)', 'XYXY'),
    of(657, 'REPT("X";2.9)', 'XX'),
    of(658, 'REPT("X";0)', ''),
  ),
  // RIGHT
  section(
    '6.20.19',
    of(659, 'RIGHT("Hello";2)', 'lo'),
    of(660, 'RIGHT("Hello")', 'o'),
    of(661, 'RIGHT("Hello";20)', 'Hello'),
    of(662, 'RIGHT("Hello";0)', ''),
    of(663, 'RIGHT("Hello";2^15-1)', 'Hello'),
    of(664, 'RIGHT("";4)', ''),
  ),
  // SEARCH
  section(
    '6.20.20',
    of(665, 'SEARCH("b";"abcabc")', 2),
    of(666, 'SEARCH("b";"abcabcabc"; 3)', 5),
    of(667, 'SEARCH("b";"ABC";1)', 2),
    of(668, 'SEARCH("c?a";"abcabcda")', 6),
    of(669, 'SEARCH("e*o";"yes and no")', 2),
    of(670, 'SEARCH("b*c";"abcabcabc")', 2),
  ),
  // SUBSTITUTE
  section(
    '6.20.21',
    of(671, 'SUBSTITUTE("121212";"2";"ab")', '1ab1ab1ab'),
    of(672, 'SUBSTITUTE("121212";"2";"ab";2)', '121ab12'),
    of(673, 'SUBSTITUTE("Hello";"x";"ab")', 'Hello'),
    of(674, 'SUBSTITUTE("xyz";"";"ab")', 'xyz'),
    of(675, 'SUBSTITUTE("";"";"ab")', ''),
  ),
  // T
  section('6.20.22', of(676, 'T("HI")', 'HI'), of(677, 'T("7")', '7'), of(678, 'T(5)', '')),
  // TEXT
  section(
    '6.20.23',
    of(679, 'TEXT("HI"; "0")', 'HI', { instead: '=TEXT("HI")' }),
    of(680, 'TEXT(5; "0")', '5', { instead: '=TEXT(5)' }),
  ),
  // TRIM
  section('6.20.24', of(681, 'TRIM(" HI ")', 'HI'), of(682, 'LEN(TRIM("H" & " " & " " & "I"))', 3)),
  // UPPER
  section('6.20.27', of(683, 'UPPER("Habc7")', 'HABC7')),
  // _DISTINCT_LOGICAL
  section(
    '4.5',
    of(686, 'ISNUMBER(TRUE())', false),
    of(687, 'ISTEXT(TRUE())', false),
    of(688, 'ISLOGICAL(1)', false),
    of(689, 'ISNUMBER(0)', true),
    of(690, 'ISLOGICAL(0)', false),
    of(691, 'ISNUMBER(TRUE())', false),
    of(692, 'ISLOGICAL(TRUE())', true),
  ),
  // _AUTO_TEXT_TO_NUMBER
  section(
    '6.3.5',
    of(696, 'VALUE("7")+0', 7, { instead: '="7"+0' }),
    of(698, 'COS(VALUE("7"))=COS(7)', true, { instead: '=COS("7")=COS(7)' }),
    of(700, 'VALUE("7")+2', 9, { instead: '="7"+[.B4]' }),
    of(702, 'VALUE("4" & "5")+2', 47, { instead: '=("4" & "5")+2' }),
    of(703, '2+VALUE("4" & "5")', 47, { instead: '=2+("4" & "5")' }),
    of(705, 'VALUE("7")+N(TRUE())', 8, { instead: '=[.B3]+[.B6]' }),
    of(706, 'DATEVALUE("2006-05-21")=DATE(2006;5;21)', true, { instead: '=("2006-05-21"+0)=DATE(2006;5;21)' }),
  ),
  // Numbers
  section('5.3', of(719, '1.5', 1.5), of(720, '1e4', 10000), of(721, '1E4', 10000)),
  // Constant Strings
  section('5.4', of(722, 'LEN("Hi")', 2), of(723, 'LEN("Hi""t")', 4), of(724, 'LEN("\\n")', 2)),
];
