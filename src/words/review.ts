// How far a language may be trusted. Every one was made by machine and says so, in itself and in English, until a
// clinician who speaks it natively has read it and signed it off.
import { type Language, languageOf } from './languages.ts';

/** Who signed a language off (a name or a role), and the ISO date. */
export interface SignOff {
  readonly signedBy: string;
  readonly date: string;
}

export type Review = 'machine-made' | SignOff;

interface ReviewWords {
  readonly machineMade: string;
  readonly signed: (by: string, date: string) => string;
}

const SENTENCES: Readonly<Record<Language, ReviewWords>> = {
  en: {
    machineMade: 'Machine-made wording, to be reviewed by a native-speaking clinician.',
    signed: (by, date) => `Wording reviewed and signed off by ${by} on ${date}.`,
  },
  fr: {
    machineMade:
      'Formulation produite par machine, à faire relire par un soignant dont le français est la langue maternelle.',
    signed: (by, date) => `Formulation relue et validée par ${by} le ${date}.`,
  },
  es: {
    machineMade:
      'Redacción generada por máquina, pendiente de revisión por un profesional sanitario de lengua materna española.',
    signed: (by, date) => `Redacción revisada y aprobada por ${by} el ${date}.`,
  },
  pt: {
    machineMade:
      'Redação gerada por máquina, a ser revista por um profissional de saúde que tenha o português como língua materna.',
    signed: (by, date) => `Redação revista e aprovada por ${by} em ${date}.`,
  },
};

const said = (language: Language, review: Review): string =>
  review === 'machine-made'
    ? SENTENCES[language].machineMade
    : SENTENCES[language].signed(review.signedBy, review.date);

/** What stands wherever the language is shown: a sentence in it, and the same in English. */
export function reviewNote(tag: string, review: Review): readonly string[] {
  const language = languageOf(tag) ?? 'en';
  return language === 'en' ? [said('en', review)] : [said(language, review), said('en', review)];
}
