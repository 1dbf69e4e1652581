// Every record of evidence: value, unit, source, how far it may be trusted, and where it is used.
import { useSearchParams } from 'wouter';
import { Input, Label, SearchField } from 'react-aria-components';
import { allEvidence, type EvidenceRecord, source } from '../../evidence/index.ts';
import { askedOf, searched, usesOf, valueText } from '../model/evidence.ts';
import { StatusBadge } from '../parts/Badge.tsx';
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

function Record({ record }: { readonly record: EvidenceRecord }) {
  const uses = usesOf(record.id);
  return (
    <li className="record" id={record.id}>
      <p className="tags">
        <code>{record.id}</code>
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
}

export function EvidencePage() {
  const [params, setParams] = useSearchParams();
  const search = params.get('find') ?? '';
  useTitle('Evidence');
  const groups = searched(search);
  const count = groups.reduce((sum, group) => sum + group.records.length, 0);
  return (
    <div className="evidence">
      <h1>Evidence</h1>
      <p className="lead">
        No number without a source. Each value stands here once, with where it comes from and how far it was
        seen. What rests on judgement says so wherever it is shown.
      </p>
      <SearchField
        className="search"
        value={search}
        onChange={(value) =>
          setParams(
            (before) => {
              if (value) before.set('find', value);
              else before.delete('find');
              return before;
            },
            { replace: true },
          )
        }
      >
        <Label>Search in all records</Label>
        <Input />
      </SearchField>
      <output>
        {count} of {allEvidence.length} records
      </output>
      {groups.map((group) => (
        <section key={group.name} aria-labelledby={`group-${group.name}`}>
          <h2 id={`group-${group.name}`}>{group.name.replaceAll('-', ' ')}</h2>
          <ul className="records">
            {group.records.map((record) => (
              <Record key={record.id} record={record} />
            ))}
          </ul>
        </section>
      ))}
    </div>
  );
}
