// Emergencies on one screen: the unit's own plan and phone numbers first, then what happened, each with one press; the card
// of the one that is open with all its first actions, where each comes from, and the one that is read now.
import { useEffect, useRef } from 'react';
import { EMERGENCY_IDS } from '../../../domain/emergencies.ts';
import type { UnitPlan } from '../../../guide/index.ts';
import type { Words } from '../../../words/index.ts';
import { Act } from './Act.tsx';
import type { Desk } from './desk.ts';
import { Middle } from './Middle.tsx';
import { Panel } from './Panels.tsx';
import { SourceOf } from './Timers.tsx';

interface PhonesProps {
  readonly plan: UnitPlan | undefined;
  readonly words: Words;
}

function Phones({ plan, words }: PhonesProps) {
  if (!plan)
    return (
      <p className="g-missing">
        {words.guide.labels.noPlan} <SourceOf spec={{ evidence: 'emergency.no-plan' }} words={words} />
      </p>
    );
  return (
    <div className="g-phones">
      <p>
        <b>{plan.title}</b>, {plan.approvedBy}, {plan.date}
      </p>
      <ul className="plain">
        {plan.phones.map(({ who, number }) => (
          <li key={who + number}>
            {words.guide.labels.line.colon(who)} <b className="g-number">{number}</b>
          </li>
        ))}
      </ul>
    </div>
  );
}

export function Emergencies({ desk }: { readonly desk: Desk }) {
  const { words, state, press, open } = desk;
  const { plan } = state.shown.script.setup.unit;
  return (
    <Panel title={words.guide.presses.emergency} words={words} close={() => open('none')}>
      <h3>{words.guide.planFirst}</h3>
      <Phones plan={plan} words={words} />
      <ul className="plain g-list">
        {EMERGENCY_IDS.map((emergency) => (
          <li key={emergency}>
            <Act
              kind="wrong"
              press={() => {
                press({ is: 'emergency', emergency });
                open('none');
              }}
            >
              {words.guide.emergencies[emergency]}
            </Act>
          </li>
        ))}
      </ul>
    </Panel>
  );
}

/** Beside the action that is read now, which stands as large as any line; it scrolls by itself, and says where more lies below. */
export function CardSide({ desk }: { readonly desk: Desk }) {
  const { screen, words } = desk;
  const { line } = words.guide.labels;
  const at = useRef<HTMLElement>(null);
  const shows = screen.card?.shows.item;
  useEffect(() => {
    const now = at.current?.querySelector('[aria-current]');
    if (shows !== undefined && shows > 0) now?.scrollIntoView({ block: 'nearest' });
  }, [shows]);
  return (
    <Middle label={words.guide.presses.emergency} moreBelow={line.moreBelow} at={at}>
      <Card desk={desk} />
    </Middle>
  );
}

/** The whole card; where there is no room beside, below its action. */
export function Card({ desk }: { readonly desk: Desk }) {
  const { words, screen, state } = desk;
  const { card } = screen;
  if (!card) return null;
  const { guide } = words;
  return (
    <section className="g-card" aria-label={guide.emergencies[card.emergency]}>
      <h2>{guide.emergencies[card.emergency]}</h2>
      <Phones plan={state.shown.script.setup.unit.plan} words={words} />
      <p>{guide.rescuer(card.rescuer)}</p>
      <ol>
        {card.items.map((item, index) => (
          <li
            key={item.from === 'unit' ? item.text : item.action}
            {...(index === card.shows.item ? { 'aria-current': 'step' as const } : {})}
          >
            {item.from === 'unit' ? item.text : guide.actions[item.action]}{' '}
            {item.from === 'unit' ? (
              <span className="g-source">{guide.planFirst}</span>
            ) : (
              <SourceOf spec={item} words={words} />
            )}
          </li>
        ))}
      </ol>
    </section>
  );
}
