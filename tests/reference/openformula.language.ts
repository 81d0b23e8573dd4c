// Cases of operators, conversions and criteria, from the OpenFormula test collection of the OASIS OpenDocument technical
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

export const LANGUAGE: readonly Section[] = [
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
    of(53, 'DSUM(Stars; "TestID"; B36_B37)', 96),
    of(54, 'DSUM(Stars; "TestID"; G36_G37)', 4757),
    of(55, 'DSUM(Stars; "TestID"; B36_C37)', 64),
    of(56, 'DSUM(Stars; "TestID"; B36_B38)', 737),
    of(57, 'DSUM(Stars; "TestID"; B36_C38)', 193),
    of(58, 'DSUM(Stars; "TestID"; B36_D38)', 0),
    of(59, 'DSUM(Stars; "TestID"; D36_D37)', 2048),
    of(60, 'DSUM(Stars; "TestID"; H36_H37)', 3679),
    of(61, 'DSUM(Stars; "TestID"; E36_E37)', 1580),
    of(62, 'DSUM(Stars; "TestID"; F36_F37)', 8128),
    of(63, 'DSUM(Stars; "TestID"; G36_G38)', 6037),
    of(64, 'DSUM(Stars; "TestID"; H38_H39)', 2048),
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
