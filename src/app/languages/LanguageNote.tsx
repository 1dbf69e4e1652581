// What stands on every page and print: how far its language may be trusted, in that language and in English.
import { Link } from 'wouter';
import { useSpoken } from '../words.ts';
import { useTrust } from './useTrust.ts';

export function LanguageNote() {
  const { language } = useSpoken();
  const { state, note } = useTrust(language);
  const [own, english] = note;
  return (
    <aside className={`language-note is-${state.is}`} aria-label="How far this language may be trusted">
      <p>
        {language !== 'en' && <span lang={language}>{own} </span>}
        <span>{english ?? own}</span>{' '}
        {state.is === 'changed' && (
          <span>It was signed off on {state.signed.on}, and what it says has changed since. </span>
        )}
        {language !== 'en' && <span>Labels and buttons of these pages are in English. </span>}
        <Link href={`/languages/${language}`}>Read and sign it off</Link>
      </p>
    </aside>
  );
}
