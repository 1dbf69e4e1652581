// Every record of evidence: value, unit, source, how far it may be trusted, and where it is used.
import { memo } from 'react';
import { allEvidence, type EvidenceRecord, source } from '../../evidence/index.ts';
import { askedOf, groupOfRecord, isRecord, searched, usesOf, valueText } from '../model/evidence.ts';
import type { Group } from '../model/finder.ts';
import { StatusBadge } from '../parts/Badge.tsx';
import { Finder, Fold } from '../parts/Finder.tsx';
import { type Finder as Found, useFinder } from '../parts/useFinder.ts';
import { useArrival, useTarget } from '../parts/useTarget.ts';
import { useTitle } from '../parts/useTitle.ts';

/** Sentences, each with one full stop. */
const sentences = (...parts: readonly (string | undefined)[]): string =>
  parts
    .filter((part) => part !== undefined && part !== '')
    .map((part) => `${part?.replace(/\.+$/, '')}.`)
    .join(' ');

function Source({ record }: { readonly record: EvidenceRecord }) {
  const { title, body, authors, year, doi, seen, part } = source(record.source.id);
  const published = year === null ? body : `${body}, ${year}`;
  const read = part === '' ? `Source: ${seen}` : `Source: ${seen}; ${part}`;
  return (
    <p className="quiet">{sentences(authors, title, published, record.where, doi && `doi ${doi}`, read)}</p>
  );
}

/** Whether and how the check asks a procedure about this rule. */
function Asked({ record }: { readonly record: EvidenceRecord }) {
  const asked = askedOf(record);
  if (!asked) return null;
  const { looksAt, kinds, brokenBy, notBecause } = asked;
  return (
    <>
      {looksAt && (
        <p className="quiet">
          Checked in every {kinds.join(' and ')}: {looksAt}
        </p>
      )}
      {brokenBy.length > 0 && (
        <p className="quiet">
          Checked: a step done by {brokenBy.map((id) => id.replaceAll('-', ' ')).join('; or by ')} departs
          from it.
        </p>
      )}
      {notBecause && <p className="quiet">Not checked: {notBecause}.</p>}
    </>
  );
}

/** Hundreds stand on the page, and none changes while somebody types. */
const Record = memo(function Record({ record }: { readonly record: EvidenceRecord }) {
  const uses = usesOf(record.id);
  return (
    <li className="record" id={record.id} tabIndex={-1}>
      <p className="tags">
        <a className="inline-link" href={`#${record.id}`}>
          <code>{record.id}</code>
        </a>
        <StatusBadge status={record.status} />
      </p>
      <p>
        {record.says}
        {record.value !== record.says && (
          <>
            {' '}
            <b>{valueText(record)}</b>
          </>
        )}
      </p>
      {record.basis && (
        <p className="quiet">
          Leans on <code>{record.basis.id}</code> times {record.basis.times}.
        </p>
      )}
      <Source record={record} />
      {record.note && <p className="quiet">Note: {record.note}</p>}
      <Asked record={record} />
      {uses.length > 0 && (
        <p className="quiet">
          Used as {uses.map(({ as, what }) => `${as} ${what.replaceAll('-', ' ')}`).join('; ')}.
        </p>
      )}
    </li>
  );
});

const counted = (count: number): string => `${count} ${count === 1 ? 'record' : 'records'}`;

function Records({ group, finder }: { readonly group: Group<EvidenceRecord>; readonly finder: Found }) {
  const { name, items } = group;
  return (
    <Fold name={name} count={counted(items.length)} finder={finder}>
      <h2>{name.replaceAll('-', ' ')}</h2>
      <ul className="records">
        {items.map((record) => (
          <Record key={record.id} record={record} />
        ))}
      </ul>
    </Fold>
  );
}

const namesFound = (search: string): readonly string[] => searched(search).map(({ name }) => name);

const finds = (search: string, id: string): boolean =>
  searched(search).some(({ items }) => items.some((record) => record.id === id));

export function EvidencePage() {
  useTitle('Evidence');
  const id = useTarget();
  const target = isRecord(id) ? id : '';
  useArrival(target);
  const finder = useFinder({
    groups: namesFound,
    standing: [],
    ...(target
      ? { target: { group: groupOfRecord(target), isFound: (search) => finds(search, target) } }
      : {}),
  });
  const groups = searched(finder.search);
  return (
    <div className="evidence">
      <h1>Evidence</h1>
      <p className="lead">
        No number without a source. Each value stands here once, with where it comes from and how far it was
        seen. What rests on judgement says so wherever it is shown.
      </p>
      <Finder
        label="Search in all records"
        what="records"
        found={groups.reduce((sum, { items }) => sum + items.length, 0)}
        all={allEvidence.length}
        finder={finder}
      />
      <div className="folds">
        {groups.map((group) => (
          <Records key={group.name} group={group} finder={finder} />
        ))}
      </div>
    </div>
  );
}
