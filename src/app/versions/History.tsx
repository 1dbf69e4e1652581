// What was done to a version: by whom, and when by the clock of the device that wrote it.
import type { Mark, ProcedureVersion } from '../../journal/views/versions.ts';
import { memberText } from '../../versions/staff.ts';
import { useBook } from '../journal/useBook.ts';
import { instantText } from './labels.ts';

interface Line {
  readonly mark: Mark;
  readonly text: string;
}

export function History({ version }: { readonly version: ProcedureVersion }) {
  const { staff } = useBook();
  const named = (people: readonly string[]): string => people.map((one) => memberText(staff, one)).join(', ');
  const { drafted, sent, sentBack, approved, retired } = version;
  const lines: readonly Line[] = [
    { mark: drafted, text: 'Draft written down' },
    ...(sent ? [{ mark: sent, text: `Sent for review to ${named(sent.to)}` }] : []),
    ...(sentBack ? [{ mark: sentBack, text: `Sent back: ${sentBack.reason}` }] : []),
    ...(approved
      ? [
          {
            mark: approved,
            text: `Approved on ${approved.on} by ${named(approved.people)}; to be looked at again by ${approved.reviewOn}`,
          },
        ]
      : []),
    ...(retired ? [{ mark: retired, text: `Retired: ${retired.reason}` }] : []),
  ];
  return (
    <ol className="plain version-history">
      {lines.map(({ mark, text }) => (
        <li key={mark.unitNumber + text}>
          {text}{' '}
          <span className="quiet">
            {memberText(staff, mark.by)}, {instantText(mark.at)}, entry {mark.unitNumber}
          </span>
        </li>
      ))}
    </ol>
  );
}
