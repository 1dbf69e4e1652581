// Reading: a reason and no more records than are needed, then what the server gives. It has told the journal before.
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { READING_REASONS } from '../../journal/kinds/unit.ts';
import { Select } from '../compose/parts.tsx';
import { Typed } from '../logbook/parts.tsx';
import type { Refused } from '../door/model.ts';
import { OneOf } from '../parts/Choices.tsx';
import { useLanding } from '../parts/useLanding.ts';
import { call } from '../sync/wire.ts';
import { type Asked, NOTHING_ASKED, readingOf, WHICHES } from './drafts.ts';
import { READ, REASONS } from './labels.ts';
import type { HealthReading, HealthRecords } from './model.ts';
import { Records } from './Records.tsx';
import { Whose } from './Whose.tsx';
import { Wrong } from '../parts/Wrong.tsx';

export interface PartProps {
  /** Told of every refusal; gives the sentence for it. */
  readonly met: (refused: Refused) => string;
}

interface Shown {
  readonly records: HealthRecords;
  /** Where the same question goes on; undefined where there is no more. */
  readonly on: (HealthReading & { readonly from: number }) | undefined;
}

function useRecords(met: PartProps['met']) {
  const [shown, setShown] = useState<Shown>();
  const [wrong, setWrong] = useState('');
  const [busy, setBusy] = useState(false);
  /** What was shown before stays only where the same question goes on. */
  const read = async (body: HealthReading | string, before?: Shown): Promise<void> => {
    if (busy) return;
    setWrong(typeof body === 'string' ? body : '');
    if (typeof body === 'string') return;
    setBusy(true);
    setShown(before);
    const answer = await call('read-health-records', { body });
    setBusy(false);
    if (answer.is !== 'answer') return setWrong(met(answer));
    const { records, next, more } = answer.body;
    const on = more && body.most === undefined ? { ...body, from: next } : undefined;
    setShown({ records: [...(before?.records ?? []), ...records], on });
  };
  return { shown, wrong, busy, read, forget: () => setShown(undefined) };
}

interface QuestionProps {
  readonly asked: Asked;
  readonly set: (asked: Asked) => void;
}

function Question({ asked, set }: QuestionProps) {
  return (
    <>
      <OneOf
        label={READ.which}
        values={WHICHES}
        chosen={asked.which}
        set={(which) => set({ ...asked, which })}
        nameOf={(which) => READ.whiches[which]}
      />
      <div className="fields lined">
        <Select
          label={READ.why}
          value={asked.why}
          none="(choose)"
          choices={READING_REASONS.map((why) => ({ value: why, name: REASONS[why] }))}
          set={(why) => set({ ...asked, why })}
        />
        {asked.which === 'person' && (
          <Whose value={asked.person} set={(person) => set({ ...asked, person })} />
        )}
        {asked.which === 'number' && (
          <Typed
            label={READ.number}
            type="number"
            value={asked.number}
            set={(number) => set({ ...asked, number })}
          />
        )}
      </div>
    </>
  );
}

interface AnswerProps {
  readonly shown: Shown;
  readonly busy: boolean;
  readonly goOn: (body: HealthReading) => void;
  readonly forget: () => void;
}

function Answered({ shown: { records, on }, busy, goOn, forget }: AnswerProps) {
  return (
    <>
      {records.length > 0 && <Records records={records} />}
      {on && <p className="quiet">{READ.more(on.from)}</p>}
      <p className="actions">
        {on && (
          <Button className="button" isDisabled={busy} onPress={() => goOn(on)}>
            {READ.on(on.from)}
          </Button>
        )}
        <Button className="button" isDisabled={busy} onPress={forget}>
          {READ.forget}
        </Button>
      </p>
    </>
  );
}

export function Read({ met }: PartProps) {
  const [asked, setAsked] = useState(NOTHING_ASKED);
  const { shown, wrong, busy, read, forget } = useRecords(met);
  const { place, land } = useLanding<HTMLHeadingElement>();
  return (
    <section aria-labelledby="health-read">
      <h2 id="health-read" ref={place} tabIndex={-1}>
        {READ.title}
      </h2>
      <p>{READ.before}</p>
      <form
        aria-labelledby="health-read"
        onSubmit={(event) => {
          event.preventDefault();
          read(readingOf(asked)).catch(() => undefined);
        }}
      >
        <Question asked={asked} set={setAsked} />
        <Wrong text={wrong} />
        <p className="actions">
          <Button type="submit" className="button main">
            {READ.press}
          </Button>
          <output>{busy ? READ.reading : shown ? READ.shown(shown.records.length) : ''}</output>
        </p>
      </form>
      {shown && (
        <Answered
          shown={shown}
          busy={busy}
          goOn={(body) => {
            read(body, shown).catch(() => undefined);
          }}
          forget={() => {
            forget();
            land();
          }}
        />
      )}
    </section>
  );
}
