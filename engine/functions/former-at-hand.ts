// The functions of former templates, at hand from the start: a formula may call them at once. The page's build takes former-later.ts in
// place of this file, for few workbooks call any.

export { FORMER as AT_HAND } from './former/index.ts';
