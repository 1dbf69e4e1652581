// The languages there are, by their BCP 47 tags; the first is spoken where none is asked for.
export const LANGUAGES = ['en', 'fr', 'es', 'pt'] as const;
export type Language = (typeof LANGUAGES)[number];

/** The language of a tag ('fr', 'pt-BR'); undefined where it is not spoken. */
export function languageOf(tag: string): Language | undefined {
  const [wanted = ''] = tag.toLowerCase().split('-');
  return LANGUAGES.find((language) => language === wanted);
}
