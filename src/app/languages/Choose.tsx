// The choice of language, in the header of every page: it changes the sentences about procedures.
import { useId } from 'react';
import { LANGUAGES, languageOf } from '../../words/index.ts';
import { speakIn, useSpoken } from '../words.ts';
import { LANGUAGE_NAMES } from './names.ts';

export function ChooseLanguage() {
  const { language } = useSpoken();
  const id = useId();
  return (
    <div className="choose-language">
      <label htmlFor={id} className="visually-hidden">
        Language of the sentences
      </label>
      <select
        id={id}
        value={language}
        onChange={(event) => {
          const chosen = languageOf(event.target.value);
          if (chosen) speakIn(chosen);
        }}
      >
        {LANGUAGES.map((one) => (
          <option key={one} value={one} lang={one}>
            {LANGUAGE_NAMES[one].own}
          </option>
        ))}
      </select>
    </div>
  );
}
