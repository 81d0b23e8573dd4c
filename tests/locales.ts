// Locales of many scripts, marks and orders, for tests of how figures and days are written.

export const LOCALES = [
  ...['en-US', 'en-GB', 'en-CA', 'en-IN', 'de-DE', 'de-AT', 'de-CH', 'fr-FR', 'fr-CA', 'fr-CH', 'es-ES', 'es-MX'],
  ...['pt-BR', 'pt-PT', 'it-IT', 'nl-NL', 'sv-SE', 'nb-NO', 'da-DK', 'fi-FI', 'is-IS', 'pl-PL', 'cs-CZ', 'sk-SK'],
  ...['sl-SI', 'hr-HR', 'hu-HU', 'ro-RO', 'bg-BG', 'el-GR', 'ru-RU', 'uk-UA', 'et-EE', 'lv-LV', 'lt-LT', 'tr-TR'],
  ...['ja-JP', 'zh-CN', 'ko-KR', 'he-IL', 'ar-EG', 'fa-IR', 'hi-IN', 'th-TH', 'vi-VN', 'id-ID', 'ca-ES', 'cy-GB'],
];
