// Cases of mathematics, rounding and statistics, from the OpenFormula test collection of the OASIS OpenDocument technical
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

export const NUMBERS: readonly Section[] = [
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
];
