// Whose records: chosen from the staff list where this device holds one, or by id. The list has roles and initials, no names.
import { useBook } from '../journal/useBook.ts';
import { Who } from '../journal/Who.tsx';
import { Typed } from '../logbook/parts.tsx';
import { WHOSE } from './labels.ts';

interface WhoseProps {
  readonly value: string;
  readonly set: (person: string) => void;
}

export function Whose({ value, set }: WhoseProps) {
  const { staff } = useBook();
  const listed = Object.keys(staff).length > 0;
  return (
    <>
      {listed && <Who label={WHOSE.list} value={value} set={set} />}
      <Typed label={WHOSE.id} value={value} set={set} hint={WHOSE.hint} />
    </>
  );
}
