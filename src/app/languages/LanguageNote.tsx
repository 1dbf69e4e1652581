// What stands on every page and print: how far its language may be trusted, in that language and in English.
import { Link } from 'wouter';
import { useSpoken } from '../words.ts';
import { isWarnedOf, useTrust } from './useTrust.ts';

export function LanguageNote({ onPaper = false }: { readonly onPaper?: boolean }) {
  const { language } = useSpoken();
  const trust = useTrust(language);
  const { state, note } = trust;
  const [own, english] = note;
  if (!onPaper && !isWarnedOf(language, trust)) return null;
  return (
    <aside className={`language-note is-${state.is}`} aria-label="How far this language may be trusted">
      <p>
        {language !== 'en' && <span lang={language}>{own} </span>}
        <span>{english ?? own}</span>{' '}
        {state.is === 'changed' && (
          <span>It was signed off on {state.signed.on}, and what it says has changed since. </span>
        )}
        {language !== 'en' && (
          <span>
            Labels and buttons of these pages are in English; those of an exit are in its language.{' '}
          </span>
        )}
        <Link href={`/languages/${language}`}>Read and sign it off</Link>
      </p>
    </aside>
  );
}
