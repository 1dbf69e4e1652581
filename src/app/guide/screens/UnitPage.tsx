// The unit's own plan for emergencies, its phone list and its limit of time in the suit. Kept in this browser alone; shown
// before anything published.
import { useState } from 'react';
import { Link } from 'wouter';
import { EMERGENCY_IDS, type EmergencyId } from '../../../domain/emergencies.ts';
import type { UnitPlan, UnitSettings } from '../../../guide/index.ts';
import { useTitle } from '../../parts/useTitle.ts';
import { words } from '../../words.ts';
import { keeper } from '../shell/rooms.ts';
import { Field } from './Field.tsx';

const NO_PLAN: UnitPlan = { title: '', approvedBy: '', date: '', phones: [], cards: {} };

interface TextProps {
  readonly label: string;
  readonly hint: string;
  readonly value: string;
  readonly set: (value: string) => void;
}

function Text({ label, hint, value, set }: TextProps) {
  return (
    <label className="g-field">
      {label} <span className="quiet">{hint}</span>
      <textarea rows={3} value={value} onChange={(event) => set(event.currentTarget.value)} />
    </label>
  );
}

const rowsOf = (text: string): readonly string[] =>
  text
    .split('\n')
    .map((row) => row.trim())
    .filter((row) => row !== '');

const phonesOf = (text: string): UnitPlan['phones'] =>
  rowsOf(text).map((row) => {
    const [who = '', ...number] = row.split(':');
    return { who: who.trim(), number: number.join(':').trim() };
  });

const phonesText = ({ phones }: UnitPlan): string =>
  phones.map(({ who, number }) => `${who}: ${number}`).join('\n');

type Cards = Readonly<Partial<Record<EmergencyId, string>>>;

const cardsText = ({ cards }: UnitPlan): Cards =>
  Object.fromEntries(Object.entries(cards).map(([id, card]) => [id, card.actions.join('\n')]));

const cardsOf = (texts: Cards): UnitPlan['cards'] =>
  Object.fromEntries(
    Object.entries(texts).flatMap(([id, text]) => {
      const actions = rowsOf(text);
      return actions.length > 0 ? [[id, { actions }]] : [];
    }),
  );

/** Empty fields are left out: a plan without a title is none. */
function unitOf(
  unit: UnitSettings,
  plan: UnitPlan,
  rescuer: string,
  minutes: string,
  source: string,
): UnitSettings {
  const { plan: _plan, wear: _wear, ...rest } = unit;
  const limitMinutes = Number(minutes);
  return {
    ...rest,
    ...(plan.title.trim() === ''
      ? {}
      : { plan: { ...plan, ...(rescuer.trim() === '' ? {} : { rescuer: rescuer.trim() }) } }),
    ...(limitMinutes > 0 && source.trim() !== '' ? { wear: { limitMinutes, source: source.trim() } } : {}),
  };
}

export function UnitPage() {
  useTitle('Plan, phones, limits');
  const [unit] = useState(keeper.unit);
  const kept = unit.plan ?? NO_PLAN;
  const [plan, setPlan] = useState(kept);
  const [phones, setPhones] = useState(phonesText(kept));
  const [cards, setCards] = useState(cardsText(kept));
  const [rescuer, setRescuer] = useState(kept.rescuer ?? '');
  const [minutes, setMinutes] = useState(String(unit.wear?.limitMinutes ?? ''));
  const [source, setSource] = useState(unit.wear?.source ?? '');
  const [said, say] = useState('');
  const save = (): void => {
    const { rescuer: _old, ...rest } = plan;
    const whole = { ...rest, phones: phonesOf(phones), cards: cardsOf(cards) };
    const done = keeper.keepUnit(unitOf(keeper.unit(), whole, rescuer, minutes, source));
    say(done ? 'Kept in this browser.' : 'This browser keeps nothing.');
  };
  return (
    <div className="narrow g-home">
      <h1>The unit’s own plan</h1>
      <p>
        Shown first in every emergency, before anything published. Kept in this browser alone; write roles and
        numbers, no names. An exit keeps the plan with which it began.
      </p>
      <Field label="Title of the plan" value={plan.title} set={(title) => setPlan({ ...plan, title })} />
      <Field
        label="Approved by (role)"
        value={plan.approvedBy}
        set={(approvedBy) => setPlan({ ...plan, approvedBy })}
      />
      <Field label="Of which day" value={plan.date} set={(date) => setPlan({ ...plan, date })} />
      <Text label="Phone list" hint="one a line, as “who: number”" value={phones} set={setPhones} />
      <Field label="Who goes in to a wearer who cannot come out (role)" value={rescuer} set={setRescuer} />
      <Field label="Limit of time in the suit, minutes" value={minutes} set={setMinutes} />
      <Field label="Where that limit is written" value={source} set={setSource} />
      <h2>Own first actions</h2>
      {EMERGENCY_IDS.map((id) => (
        <Text
          key={id}
          label={words.guide.emergencies[id]}
          hint="one action a line, in their order"
          value={cards[id] ?? ''}
          set={(text) => setCards({ ...cards, [id]: text })}
        />
      ))}
      <p className="actions">
        <button type="button" className="button main" onClick={save}>
          Keep it
        </button>
        <output>{said}</output>
        <Link href="/guide">Back to the guide</Link>
      </p>
    </div>
  );
}
