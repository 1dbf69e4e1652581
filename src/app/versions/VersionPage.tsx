// One version: to read, print, compare and copy at every stage; under review with its findings, the diff and the decision;
// approved it is never edited, only copied or retired.
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { Link, useLocation } from 'wouter';
import type { Procedure } from '../../domain/procedure.ts';
import { versionInForce } from '../../journal/views/versions.ts';
import { departureRows } from '../../versions/departures.ts';
import { nextVersion } from '../../versions/naming.ts';
import { type Hindrance, hindrances } from '../../versions/sending.ts';
import { memberText } from '../../versions/staff.ts';
import { type Progress, useCheck } from '../check/client.ts';
import { TextLine } from '../compose/parts.tsx';
import { drafts } from '../compose/store/useDrafts.ts';
import { FindingRow } from '../findings/FindingRow.tsx';
import { Summary } from '../findings/Summary.tsx';
import { useBar } from '../journal/useBar.ts';
import { book, useBook } from '../journal/useBook.ts';
import { Who } from '../journal/Who.tsx';
import { LanguageNote } from '../languages/LanguageNote.tsx';
import { choiceFrom, limitsFor, shownFor } from '../model/findings.ts';
import { NotFound } from '../pages/NotFound.tsx';
import { donningFor } from '../library.ts';
import { Confirm } from '../parts/Confirm.tsx';
import { PrintPanel } from '../print/PrintPanel.tsx';
import { useTitle } from '../parts/useTitle.ts';
import { Waiting } from '../parts/Waiting.tsx';
import { words } from '../words.ts';
import { AcceptedRows } from './Accepted.tsx';
import { Diff } from './Diff.tsx';
import { fileIn, fileOf } from './files.ts';
import { History } from './History.tsx';
import { setLineage } from './lineage.ts';
import {
  approvalOf,
  entryIdOf,
  type Known,
  retiring,
  stageText,
  versionNamed,
  versionPath,
  versionsOf,
} from './model.ts';
import { Opening } from './Opening.tsx';
import { Decide } from './Review.tsx';
import { saveText } from '../parts/save.ts';

interface VersionProps {
  readonly known: Known;
  readonly file: Procedure;
  readonly text: string;
  readonly fileName: string;
}

/** The draft is another file with another name of its version: nothing leads back into the version. */
function NewDraft({ known: { procedure, version }, file }: Pick<VersionProps, 'known' | 'file'>) {
  const state = useBook();
  const [, go] = useLocation();
  const taken = new Set(versionsOf(state, procedure).map((one) => one.version.version));
  const begin = (): void => {
    const next = nextVersion(version.version, taken);
    const draft = drafts.create({ ...file, version: next }, `New draft from version ${version.version}`);
    setLineage(draft, procedure);
    go(`/write/${draft}/steps`);
  };
  return (
    <Button className="button main" onPress={begin}>
      New draft from it
    </Button>
  );
}

function Actions({ known, file, text, fileName }: VersionProps) {
  const state = useBook();
  const others = versionsOf(state, known.procedure).filter(
    ({ version }) => version.content !== known.version.content,
  );
  const id = entryIdOf(known.version);
  return (
    <p className="actions no-print">
      <NewDraft known={known} file={file} />
      <Link href={`/procedure/${id}/steps`} className="button">
        Picture, ledger, surfaces
      </Link>
      {known.inForce && (
        <Link href={`/guide?procedure=approved-${known.procedure}`} className="button">
          Guide an exit with it
        </Link>
      )}
      {others.map(({ version }) => (
        <Link key={version.version} href={`/compare?a=${entryIdOf(version)}&b=${id}`} className="button">
          Compare with version {version.version}
        </Link>
      ))}
      <Button className="button" onPress={() => saveText(fileName, text, 'application/yaml')}>
        Save the file
      </Button>
    </p>
  );
}

/** Every sentence, as it is read aloud. */
function StepList({ file }: { readonly file: Procedure }) {
  return (
    <section aria-labelledby="steps-title">
      <h2 id="steps-title">Steps</h2>
      <ol className="version-steps" lang={words.language}>
        {file.steps.map((step) => {
          const doer = file.people.find(({ id }) => id === step.who);
          return (
            <li key={step.id}>
              {doer && doer.role !== 'wearer' && <b className="doer">{words.person(file, doer.id)}: </b>}
              {words.step(file, step)}
              {step.note && <span className="quiet note"> {step.note}</span>}
            </li>
          );
        })}
      </ol>
    </section>
  );
}

function Found({
  known,
  file,
  progress,
}: Pick<VersionProps, 'known' | 'file'> & { readonly progress: Progress }) {
  const { judged, complete = false } = progress.result ?? {};
  const choice = choiceFrom(null, file.agents);
  const shown = judged ? shownFor(judged.findings, choice) : [];
  return (
    <section aria-labelledby="found-title" className="no-print">
      <h2 id="found-title">What the check finds in it</h2>
      <Waiting progress={progress} />
      {judged && (
        <>
          <Summary
            shown={shown}
            title="In numbers"
            level={3}
            complete={complete}
            limits={limitsFor(judged.limits, choice)}
            compact
          />
          <details>
            <summary>Every finding ({shown.length})</summary>
            <ul className="rows">
              {shown.map((one) => (
                <FindingRow
                  key={one.key}
                  id={entryIdOf(known.version)}
                  shown={one}
                  procedure={judged.procedure}
                />
              ))}
            </ul>
          </details>
        </>
      )}
    </section>
  );
}

function Retire({
  known,
  file,
  written,
}: Pick<VersionProps, 'known' | 'file'> & { readonly written: (what: string) => void }) {
  const { staff } = useBook();
  const bar = useBar('procedure.retired');
  const [who, setWho] = useState('');
  const [reason, setReason] = useState('');
  const { procedure, version } = known;
  const missing = who === '' ? 'Choose who retires it.' : reason.trim() === '' ? 'Say why.' : undefined;
  const write = async (): Promise<void> => {
    await book.write(retiring(procedure, version, who, reason.trim()));
    written(`Version ${version.version} is retired.`);
  };
  return (
    <details className="no-print">
      <summary>Retire this version</summary>
      <div className="fields">
        <Who label="Who retires it" value={who} set={setWho} />
        <TextLine long label="Why it is retired" value={reason} set={setReason} />
      </div>
      <p className="actions">
        <Confirm
          main={false}
          label="Retire it …"
          title={`Retire version ${version.version}`}
          sentence={`The journal will say that ${memberText(staff, who)} retired version ${version.version} of “${file.title}”, because: ${reason.trim()}`}
          isDisabled={missing !== undefined}
          bar={bar}
          write={write}
        />
        <output className="quiet">{bar ? '' : missing}</output>
      </p>
    </details>
  );
}

/** What stands in the way of approving it: the same as stood in the way of sending it, seen on this device. */
function hindersIn(
  { version }: Known,
  file: Procedure,
  text: string,
  { result }: Progress,
  today: string,
): readonly Hindrance[] {
  const { judged, complete = false } = result ?? {};
  const choice = choiceFrom(null, file.agents);
  const findings = shownFor(judged?.findings ?? [], choice).map(({ finding }) => finding);
  const checked = judged && complete ? { findings, limits: limitsFor(judged.limits, choice) } : undefined;
  const { title, accepted } = file;
  const broken = result !== undefined && complete && !judged;
  return hindrances(
    { title, version: version.version, text, content: version.content, accepted, checked, broken },
    undefined,
    today,
  );
}

const MEANS: Readonly<Record<Known['version']['stage'], string>> = {
  draft: 'It is no more than a draft: nobody approved it.',
  review: 'It is under review: nobody has approved it yet.',
  approved: 'It is approved, and never changes: copy it into a new draft to change anything.',
  retired: 'It is retired: nobody works by it any more. It never changes.',
};

function Version(props: VersionProps & { readonly today: string }) {
  const { known, file, text, fileName, today } = props;
  const { procedure, version } = known;
  const state = useBook();
  const progress = useCheck({ text, fileName });
  const [done, setDone] = useState('');
  const force = versionInForce(state.versions, procedure);
  const before = force && force.version !== version.version ? fileOf(state, procedure, force) : undefined;
  const accepted = departureRows(state.versions, (content) => fileIn(state, content), today).filter(
    (row) => row.procedure === procedure && row.version === version.version,
  );
  return (
    <article className="version">
      <h1>{file.title}</h1>
      <p className="tags">
        <span className="badge">version {version.version}</span>
        <span className={`badge stage-${version.stage}`}>{stageText(known)}</span>
        <span className="badge">{words.kind(file.kind)}</span>
        {file.invented && <span className="badge invented">Invented, for demonstration</span>}
      </p>
      <p>{MEANS[version.stage]}</p>
      <output className="done no-print">{done}</output>
      {force && force.version !== version.version && (
        <p>
          In force: <Link href={versionPath(procedure, force.version)}>version {force.version}</Link>
        </p>
      )}
      <History version={version} />
      <Actions known={known} file={file} text={text} fileName={fileName} />
      <PrintPanel
        printable={() => ({ text, approval: approvalOf(version), donning: donningFor(file.donning) })}
      />
      {version.stage !== 'retired' && <Found known={known} file={file} progress={progress} />}
      {before && (
        <Diff
          before={before}
          now={{ text, fileName }}
          than={`version ${force?.version}, which is in force`}
        />
      )}
      {accepted.length > 0 && (
        <section aria-labelledby="accepted-title">
          <h2 id="accepted-title">Accepted in writing</h2>
          <AcceptedRows
            rows={accepted}
            findings={progress.result?.complete ? progress.result.judged?.findings : undefined}
          />
        </section>
      )}
      {version.stage === 'review' && (
        <Decide
          procedure={procedure}
          version={version}
          file={file}
          inForce={force}
          hinders={hindersIn(known, file, text, progress, today)}
          today={today}
          written={setDone}
        />
      )}
      <StepList file={file} />
      <div className="print-only">
        <LanguageNote onPaper />
      </div>
      {version.stage === 'approved' && <Retire known={known} file={file} written={setDone} />}
      <p className="no-print">
        <Link href={`/versions/${procedure}`}>Every version of this procedure</Link>
      </p>
      <p className="quiet">
        File {version.content.slice(0, 16)}… (SHA-256), as it was written in entry{' '}
        {version.drafted.unitNumber}.
      </p>
    </article>
  );
}

interface PageProps {
  readonly procedure: string;
  readonly name: string;
  readonly today: string;
}

export function VersionPage({ procedure, name, today }: PageProps) {
  const state = useBook();
  const version = versionNamed(state, procedure, name);
  const file = version && fileIn(state, version.content);
  const held = version && fileOf(state, procedure, version);
  useTitle(file ? `${file.title}, version ${name}` : 'Version');
  if (state.is !== 'ready') return <Opening />;
  if (!version) return <NotFound what="This version" />;
  if (!file || !held) {
    return (
      <>
        <h1>Version {name}</h1>
        <p role="alert">The file of this version is not on this device. Its history is:</p>
        <History version={version} />
      </>
    );
  }
  const inForce = versionInForce(state.versions, procedure)?.version === name;
  return <Version known={{ procedure, version, inForce }} file={file} {...held} today={today} />;
}
