// Who takes part, in which room, and in which language each person is read to.
import type { UnitSettings } from '../../../guide/index.ts';
import { readProcedure } from '../../../language/index.ts';
import { type Language, LANGUAGES, wordsFor } from '../../../words/index.ts';
import { words } from '../../words.ts';
import type { Choice } from './choices.ts';
import { Field } from './Field.tsx';

interface LanguagesProps {
  readonly choice: Choice;
  readonly unit: UnitSettings;
  readonly set: (unit: UnitSettings) => void;
}

/** In which language each person of the procedure is read to. */
function Languages({ choice, unit, set }: LanguagesProps) {
  const { procedure } = readProcedure(choice.text, choice.fileName);
  if (!procedure) return null;
  return (
    <>
      {procedure.people.map(({ id }) => (
        <label key={id} className="g-field">
          Language of {words.person(procedure, id)}
          <select
            value={unit.languages[id] ?? 'en'}
            onChange={(event) =>
              set({ ...unit, languages: { ...unit.languages, [id]: event.currentTarget.value as Language } })
            }
          >
            {LANGUAGES.map((language) => (
              <option key={language} value={language}>
                {new Intl.DisplayNames('en', { type: 'language' }).of(wordsFor(language).language)}
              </option>
            ))}
          </select>
        </label>
      ))}
    </>
  );
}

export interface Filled {
  readonly wearer: string;
  readonly observer: string;
  readonly assistant: string;
  readonly room: string;
}

interface WhoProps {
  readonly filled: Filled;
  readonly set: (part: Partial<Filled>) => void;
  readonly choice: Choice | undefined;
  readonly unit: UnitSettings;
  readonly setUnit: (unit: UnitSettings) => void;
}

export function Who({ filled, set, choice, unit, setUnit }: WhoProps) {
  return (
    <fieldset>
      <legend>Who: initials only, never names</legend>
      <Field label="Wearer" value={filled.wearer} set={(wearer) => set({ wearer })} />
      <Field label="Observer" value={filled.observer} set={(observer) => set({ observer })} />
      <Field
        label="Assistant"
        hint="(if there is one)"
        value={filled.assistant}
        set={(assistant) => set({ assistant })}
      />
      <Field label="Room" value={filled.room} set={(room) => set({ room })} />
      {choice && <Languages key={choice.id} choice={choice} unit={unit} set={setUnit} />}
    </fieldset>
  );
}
