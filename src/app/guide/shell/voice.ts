// Reading aloud, beside the large text and never in its place: the browser's speech where it has a voice for the language,
// and a word on the screen where it has none. A silent one stands in for it in tests.
export type Speech = 'spoken' | 'no-voice' | 'off';

export interface Voice {
  /**
   * Says a text in a language (BCP 47); what was still being said is broken off by `hush`. Browsers know their voices late:
   * where one comes before the text is over with, it is said then, and `late` is told.
   */
  readonly speak: (text: string, language: string, late?: (speech: Speech) => void) => Speech;
  readonly hush: () => void;
}

interface Said {
  readonly text: string;
  readonly language: string;
}

/** Says nothing and remembers what it would have said. */
export function silentVoice(languages: readonly string[] = ['en', 'fr', 'es', 'pt']): Voice & {
  readonly said: readonly Said[];
} {
  const said: Said[] = [];
  return {
    said,
    speak: (text, language) => {
      said.push({ text, language });
      return languages.includes(language) ? 'spoken' : 'no-voice';
    },
    hush: () => undefined,
  };
}

const isFor = (voice: SpeechSynthesisVoice, language: string): boolean =>
  voice.lang.toLowerCase().split(/[-_]/)[0] === language;

/** The device's own voices only: a voice that is fetched may be late, and sends the line elsewhere. */
export function browserVoice(page: Window): Voice {
  const { speechSynthesis } = page as Partial<Pick<Window, 'speechSynthesis'>>;
  const say = (text: string, language: string): Speech => {
    const voice = speechSynthesis?.getVoices().find((one) => one.localService && isFor(one, language));
    if (!speechSynthesis || !voice) return 'no-voice';
    const saying = new SpeechSynthesisUtterance(text);
    saying.voice = voice;
    saying.lang = voice.lang;
    speechSynthesis.speak(saying);
    return 'spoken';
  };
  /** What is still to be said once its voice is there. */
  let unsaid: (() => void)[] = [];
  speechSynthesis?.addEventListener('voiceschanged', () => {
    const again = unsaid;
    unsaid = [];
    for (const one of again) one();
  });
  const speak: Voice['speak'] = (text, language, late) => {
    const now = say(text, language);
    if (now === 'no-voice') unsaid.push(() => late?.(speak(text, language, late)));
    return now;
  };
  return {
    speak,
    hush: () => {
      unsaid = [];
      speechSynthesis?.cancel();
    },
  };
}
