// The journal of this device: how many entries, whether its chain is unbroken, who may sign, and the way out of it as
// JSON Lines.
import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import { type Audit, audit } from '../../journal/audit.ts';
import { exportLine } from '../../journal/export.ts';
import { pages } from '../../journal/fold.ts';
import { Tick } from '../parts/Choices.tsx';
import { saveText } from '../parts/save.ts';
import { useTitle } from '../parts/useTitle.ts';
import { counted } from '../versions/labels.ts';
import { reasonOf } from './book.ts';
import { flawText } from './labels.ts';
import { book, DEVICE, unitNamed, useBook } from './useBook.ts';
import { StaffList } from './Who.tsx';

type Verified = { readonly audit: Audit } | { readonly why: string };

/** Verified anew whenever an entry came. */
function useAudit(entries: number): Verified | undefined {
  const [found, setFound] = useState<Verified & { readonly of: number }>();
  useEffect(() => {
    let stale = false;
    const verify = async (): Promise<Verified> => {
      try {
        return { audit: await audit(await book.store(), { received: true }) };
      } catch (error) {
        return { why: reasonOf(error) };
      }
    };
    verify()
      .then((verified) => {
        if (!stale) setFound({ ...verified, of: entries });
      })
      .catch(() => undefined);
    return () => {
      stale = true;
    };
  }, [entries]);
  return found?.of === entries ? found : undefined;
}

function Chain({ verified }: { readonly verified: Verified | undefined }) {
  if (!verified) return <output className="waiting">Verifying the journal …</output>;
  if ('why' in verified) {
    return (
      <p role="alert" className="wrong">
        The journal could not be verified: {verified.why}
      </p>
    );
  }
  const { entries, head, flaws, more, damage, falseSnapshots } = verified.audit;
  const wrong = [
    ...flaws.map(flawText),
    ...(more > 0 ? [`And ${more} more.`] : []),
    ...damage,
    ...falseSnapshots.map((view) => `A saved view, “${view}”, is not what the entries make.`),
  ];
  const sound = wrong.length === 0;
  return (
    <>
      <p>
        <b>
          Journal: {counted(entries, 'entry', 'entries')}, chain {sound ? 'unbroken' : 'BROKEN'}
        </b>
      </p>
      {!sound && (
        <ul role="alert" className="limits">
          {wrong.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
      {sound && entries > 0 && (
        <p className="quiet">
          No altered, missing or moved entry was found. That says nothing of whether what was written is true.
          It ends at{' '}
          <code>
            {head.number}:{head.hash}
          </code>
          . Written down on paper, this shows later that nothing before it was rewritten.
        </p>
      )}
    </>
  );
}

async function linesOf(text: boolean): Promise<string> {
  const lines: string[] = [];
  for await (const page of pages(await book.store()))
    lines.push(...page.map((one) => `${exportLine(one, { text })}\n`));
  return lines.join('');
}

function Export({ unit }: { readonly unit: string }) {
  const [withText, setWithText] = useState(false);
  const [wrong, setWrong] = useState('');
  const act = (): void => {
    linesOf(withText)
      .then((text) => saveText(`${unit}-${DEVICE}.jsonl`, text, 'application/jsonl'))
      .catch((error: unknown) => setWrong(reasonOf(error)));
  };
  return (
    <section aria-labelledby="export-title">
      <h2 id="export-title">Take it out</h2>
      <p>
        One entry a line, as JSON Lines. Without typed text nothing is in it in which somebody may have typed
        a name; procedure files are left out with it.
      </p>
      <Tick on={withText} set={setWithText}>
        With everything that was typed
      </Tick>
      <p className="actions">
        <Button className="button main" onPress={act}>
          Save as JSON Lines
        </Button>
      </p>
      <p role="alert" className={wrong ? 'wrong' : ''}>
        {wrong}
      </p>
    </section>
  );
}

export function JournalPage() {
  const state = useBook();
  const verified = useAudit(state.entries);
  const unit = unitNamed(state);
  useTitle('Journal');
  return (
    <div className="narrow">
      <h1>Journal of this device</h1>
      <p className="lead">
        What was sent, approved, accepted and signed off, entry by entry. Entries are only ever added; each
        carries the hash of the one before it.
      </p>
      <Chain verified={verified} />
      <dl>
        <dt>This device</dt>
        <dd>
          <code>{DEVICE}</code>
        </dd>
        <dt>Unit</dt>
        <dd>
          {unit ? (
            <>
              {unit.title} <code className="quiet">{unit.id}</code>
            </>
          ) : (
            'not named yet'
          )}
        </dd>
      </dl>
      <section aria-labelledby="staff-title">
        <h2 id="staff-title">Staff list</h2>
        <p>
          Who may send, approve and sign, by role and initials. No real name belongs here. On this device
          everybody may say who they are: it shows who was named, and proves nothing of who stood there.
        </p>
        <StaffList />
      </section>
      <Export unit={unit?.id ?? 'journal'} />
    </div>
  );
}
