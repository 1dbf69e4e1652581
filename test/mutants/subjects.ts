// What is mutated: every published procedure, and the invented unit's present version. Version 1 has faults built in.
import type { Procedure } from '../../src/domain/procedure.ts';
import { files, procedureOf } from '../procedures/shelf.ts';
import { OPERATORS } from './operators.ts';

export interface Subject {
  readonly name: string;
  readonly procedure: Procedure;
  /** The doffing that undoes a donning, or the donning that a doffing undoes. */
  readonly counterpart: Procedure | undefined;
}

export interface Mutant {
  readonly subject: Subject;
  readonly operator: string;
  readonly at: string;
  readonly procedure: Procedure;
}

function counterpartOf(file: string): Procedure | undefined {
  const { donning } = procedureOf(file);
  const other = donning ?? files.find((candidate) => procedureOf(candidate).donning === file);
  return other === undefined ? undefined : procedureOf(other);
}

export const SUBJECTS: readonly Subject[] = files
  .filter((file) => !procedureOf(file).invented || file === 'larkmoor-suit-doffing-v2.yaml')
  .map((file) => ({
    name: file.replace('.yaml', ''),
    procedure: procedureOf(file),
    counterpart: counterpartOf(file),
  }));

export const mutantsOf = (subject: Subject): readonly Mutant[] =>
  OPERATORS.flatMap((operator) =>
    operator.sites(subject.procedure).map(({ at, steps }) => ({
      subject,
      operator: operator.id,
      at,
      procedure: { ...subject.procedure, steps },
    })),
  );
