// What the languages are called: by those who speak them, and in English.
import type { Language } from '../../words/index.ts';

export const LANGUAGE_NAMES: Readonly<Record<Language, { readonly own: string; readonly english: string }>> =
  {
    en: { own: 'English', english: 'English' },
    fr: { own: 'Français', english: 'French' },
    es: { own: 'Español', english: 'Spanish' },
    pt: { own: 'Português (Brasil)', english: 'Portuguese (Brazil)' },
  };
