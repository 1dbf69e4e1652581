// A day, by the browser's own field.
import { Labelled } from './Labelled.tsx';

interface DayProps {
  readonly label: string;
  readonly value: string;
  readonly least?: string;
  readonly set: (day: string) => void;
}

export function Day({ label, value, least, set }: DayProps) {
  return (
    <Labelled label={label}>
      {(tied) => (
        <input
          {...tied}
          type="date"
          value={value}
          {...(least === undefined ? {} : { min: least })}
          onChange={(event) => set(event.target.value)}
        />
      )}
    </Labelled>
  );
}
