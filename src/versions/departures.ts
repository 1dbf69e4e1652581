// Departures that versions accept in writing, across all of them: what is to be looked at again, the overdue first. Today
// comes in as a value. A retired version needs no second look; its departures stay in sight, last.
import type { Acceptance, Procedure } from '../domain/procedure.ts';
import type { ProcedureVersion, Stage, VersionsState } from '../journal/views/versions.ts';
import { daysBetween } from './days.ts';

export interface DepartureRow {
  readonly procedure: string;
  readonly version: string;
  readonly stage: Stage;
  readonly acceptance: Acceptance;
  /** The file that accepts it. */
  readonly file: Procedure;
  /** Days until it is looked at again; negative where that day has passed. */
  readonly days: number;
  readonly overdue: boolean;
}

/** A procedure's file by the hash of its text; undefined where this device has not got it. */
export type FileOf = (content: string) => Procedure | undefined;

const rowsOf = (
  procedure: string,
  { version, stage, content }: ProcedureVersion,
  fileOf: FileOf,
  today: string,
): readonly DepartureRow[] => {
  const file = fileOf(content);
  return (file?.accepted ?? []).map((acceptance): DepartureRow => {
    const days = daysBetween(today, acceptance.review);
    return {
      procedure,
      version,
      stage,
      acceptance,
      file: file!,
      days,
      overdue: days < 0 && stage !== 'retired',
    };
  });
};

/** Overdue first, the longest overdue at the top; then by the day they are due; those of retired versions last. */
export function departureRows(state: VersionsState, fileOf: FileOf, today: string): readonly DepartureRow[] {
  const rows = Object.entries(state.procedures).flatMap(([procedure, versions]) =>
    Object.values(versions).flatMap((version) => rowsOf(procedure, version, fileOf, today)),
  );
  return rows.toSorted(
    (a, b) =>
      Number(a.stage === 'retired') - Number(b.stage === 'retired') ||
      a.days - b.days ||
      a.procedure.localeCompare(b.procedure, 'en') ||
      a.version.localeCompare(b.version, 'en'),
  );
}

export interface ReviewDue {
  readonly procedure: string;
  readonly version: string;
  /** SHA-256 of its file. */
  readonly content: string;
  readonly reviewOn: string;
  readonly days: number;
}

/** Approved versions by the day by which they are looked at again, the most urgent first. */
export const reviewsDue = (state: VersionsState, today: string): readonly ReviewDue[] =>
  Object.entries(state.procedures)
    .flatMap(([procedure, versions]) =>
      Object.values(versions).flatMap(({ version, content, stage, approved }): readonly ReviewDue[] =>
        stage === 'approved' && approved
          ? [
              {
                procedure,
                version,
                content,
                reviewOn: approved.reviewOn,
                days: daysBetween(today, approved.reviewOn),
              },
            ]
          : [],
      ),
    )
    .toSorted((a, b) => a.days - b.days);
