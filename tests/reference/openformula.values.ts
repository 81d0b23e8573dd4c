// Cases of finance, information, look-ups, logic and text, from the OpenFormula test collection of the OASIS OpenDocument technical
// committee (openformula-testsuite-20060724.ods).
// Formulas with cells of its fixture are written with constants, or with the sheets of ../functions/formulas.ts; each stands under its
// section of OpenDocument 1.3 part 4. Where typed sheets say a thing another way, `instead` keeps the collection's formula.
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

import { EPSILON, ERROR, of, type Section, section } from './openformula.case.ts';

export const VALUES: readonly Section[] = [
  // DAVERAGE
  section('6.9.2', of(153, 'DAVERAGE(Stars; "TestID"; B36_B37)', 48)),
  // DCOUNT
  section('6.9.3', of(154, 'DCOUNT(Stars; "Bright Stars"; B36_B37)', 2)),
  // DCOUNTA
  section('6.9.4', of(155, 'DCOUNTA(Stars; "Bright Stars"; B36_B37)', 2)),
  // DGET
  section('6.9.5', of(156, 'DGET(Stars; "TestID"; D36_D37)', 2048), of(157, 'DGET(Stars; "TestID"; B36_B37)', ERROR)),
  // DMAX
  section('6.9.6', of(158, 'DMAX(Stars; "TestID"; B36_B37)', 64)),
  // DMIN
  section('6.9.7', of(159, 'DMIN(Stars; "TestID"; B36_B37)', 32)),
  // DPRODUCT
  section('6.9.8', of(160, 'DPRODUCT(Stars; "TestID"; B36_B37)', 2048)),
  // DSTDEV
  section('6.9.9', of(161, 'DSTDEV(Stars; "TestID"; B36_B37)', 22.6274169979695, { within: EPSILON })),
  // DSTDEVP
  section('6.9.10', of(162, 'DSTDEVP(Stars; "TestID"; B36_B37)', 16)),
  // DSUM
  section('6.9.11', of(163, 'DSUM(Stars; "TestID"; B36_B37)', 96)),
  // DVAR
  section('6.9.12', of(164, 'DVAR(Stars; "TestID"; B36_B37)', 512)),
  // DVARP
  section('6.9.13', of(165, 'DVARP(Stars; "TestID"; B36_B37)', 256)),
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
    of(297, 'VLOOKUP("Ursa Major"; B19_I31; 2)', 6),
    of(298, 'VLOOKUP("Ursa Major"; B19_I31; 4)', 'Uma'),
    // Neither case holds in a column that counts as sorted upwards; both hold for equal values.
    of(299, 'VLOOKUP(2; C19_I31; 3; FALSE)', 'Cmi', { instead: '=VLOOKUP(2; [.C19:.I31];3)' }),
    of(300, 'VLOOKUP("NoSuchConstellation"; B19_I31; 4; FALSE)', ERROR, {
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
];
