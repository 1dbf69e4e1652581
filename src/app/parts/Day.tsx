// A day, by the browser's own field.
import { useId } from 'react';

interface DayProps {
  readonly label: string;
  readonly value: string;
  readonly least?: string;
  readonly set: (day: string) => void;
}

export function Day({ label, value, least, set }: DayProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="date"
        value={value}
        {...(least === undefined ? {} : { min: least })}
        onChange={(event) => set(event.target.value)}
      />
    </div>
  );
}
