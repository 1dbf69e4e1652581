// A labelled field of one row.
interface FieldProps {
  readonly label: string;
  readonly value: string;
  readonly set: (value: string) => void;
  readonly hint?: string;
}

export function Field({ label, value, set, hint }: FieldProps) {
  return (
    <label className="g-field">
      {label}
      {hint !== undefined && <span className="quiet"> {hint}</span>}
      <input value={value} onChange={(event) => set(event.currentTarget.value)} autoComplete="off" />
    </label>
  );
}
