// Ticks and choices of one, large enough for a gloved finger.
import type { ReactNode } from 'react';
import {
  CheckboxButton,
  CheckboxField,
  CheckboxGroup,
  Label,
  RadioButton,
  RadioField,
  RadioGroup,
} from 'react-aria-components';

interface TickProps {
  readonly children: ReactNode;
  /** In a group. */
  readonly value?: string;
  readonly on?: boolean;
  readonly set?: (on: boolean) => void;
}

export function Tick({ children, value, on, set }: TickProps) {
  return (
    <CheckboxField
      {...(value === undefined ? {} : { value })}
      {...(on === undefined ? {} : { isSelected: on })}
      {...(set ? { onChange: set } : {})}
    >
      <CheckboxButton className="pill">
        <span className="tick" aria-hidden="true" />
        <span>{children}</span>
      </CheckboxButton>
    </CheckboxField>
  );
}

interface TicksProps<Value extends string> {
  readonly label: string;
  readonly values: readonly Value[];
  readonly chosen: ReadonlySet<Value>;
  readonly set: (chosen: ReadonlySet<Value>) => void;
  readonly nameOf: (value: Value) => ReactNode;
}

/** Any number of these. */
export function Ticks<Value extends string>({ label, values, chosen, set, nameOf }: TicksProps<Value>) {
  return (
    <CheckboxGroup
      className="choice"
      value={[...chosen]}
      onChange={(now) => set(new Set(values.filter((value) => now.includes(value))))}
    >
      <Label>{label}</Label>
      {values.map((value) => (
        <Tick key={value} value={value}>
          {nameOf(value)}
        </Tick>
      ))}
    </CheckboxGroup>
  );
}

interface OneOfProps<Value extends string> {
  readonly label: string;
  readonly quietLabel?: boolean;
  readonly values: readonly Value[];
  readonly chosen: Value;
  readonly set: (value: Value) => void;
  readonly nameOf: (value: Value) => ReactNode;
}

/** Exactly one of these. */
export function OneOf<Value extends string>(props: OneOfProps<Value>) {
  const { label, quietLabel = false, values, chosen, set, nameOf } = props;
  const choose = (now: string): void => {
    const value = values.find((one) => one === now);
    if (value !== undefined) set(value);
  };
  return (
    <RadioGroup className="choice" orientation="horizontal" value={chosen} onChange={choose}>
      <Label className={quietLabel ? 'visually-hidden' : 'choice-label'}>{label}</Label>
      {values.map((value) => (
        <RadioField key={value} value={value}>
          <RadioButton className="pill">
            <span className="tick round" aria-hidden="true" />
            <span>{nameOf(value)}</span>
          </RadioButton>
        </RadioField>
      ))}
    </RadioGroup>
  );
}
