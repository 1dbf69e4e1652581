// The code of a pairing, large and as a picture, until a tablet has used it or its time is over.
import { useEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { landOn } from '../parts/useLanding.ts';
import { PAIR } from './leadLabels.ts';
import { type Device, hasJoined, isOwnMachine, leftText, type Offer } from './model.ts';
import { Wrong } from '../parts/Wrong.tsx';

const SECOND_MS = 1000;
/** How often it is asked whether the tablet has joined. The house's own choice. */
const LOOK_MS = 4000;

const secondsTo = (until: number): number => Math.max(0, Math.ceil((until - Date.now()) / SECOND_MS));

function useSecondsLeft(until: number): number {
  const [left, setLeft] = useState(() => secondsTo(until));
  useEffect(() => {
    const tick = setInterval(() => setLeft(secondsTo(until)), SECOND_MS);
    return () => clearInterval(tick);
  }, [until]);
  return left;
}

function useLooking(load: () => void, isOpen: boolean): void {
  useEffect(() => {
    if (!isOpen) return undefined;
    const look = setInterval(load, LOOK_MS);
    return () => clearInterval(look);
  }, [load, isOpen]);
}

function Code({ offer, left }: { readonly offer: Offer; readonly left: number }) {
  return (
    <div className="pair-offer">
      <img
        className="pair-picture"
        alt={PAIR.alt}
        src={`data:image/svg+xml,${encodeURIComponent(offer.qr)}`}
      />
      <div>
        <p>
          {PAIR.code}: <strong className="pair-code">{offer.code}</strong>
        </p>
        {/* Not told second by second to a screen reader: it is read when one goes there. */}
        <p role="timer">{PAIR.left(leftText(left))}</p>
        <p>{PAIR.how}</p>
        <p>
          <code>{offer.address}</code>
        </p>
        <p className="quiet">{PAIR.orType}</p>
        {isOwnMachine(offer.address) && (
          <p className="wrong" role="note">
            {PAIR.here}
          </p>
        )}
      </div>
    </div>
  );
}

interface OfferProps {
  readonly offer: Offer;
  readonly label: string;
  readonly until: number;
  readonly before: readonly Device[];
  readonly devices: readonly Device[];
  readonly load: () => void;
  /** Another code for the same tablet; gives why there is none. */
  readonly again: () => Promise<string>;
  readonly done: () => void;
}

export function OfferShown({ offer, label, until, before, devices, load, again, done }: OfferProps) {
  const left = useSecondsLeft(until);
  const joined = hasJoined(offer, before, devices);
  const [wrong, setWrong] = useState('');
  const place = useRef<HTMLHeadingElement>(null);
  useLooking(load, left > 0 && !joined);
  // What was pressed for it is gone.
  useEffect(() => landOn(() => place.current), []);
  const says = joined ? PAIR.joined(label) : left === 0 ? PAIR.ended : '';
  return (
    <>
      <h3 ref={place} tabIndex={-1}>
        {label}
      </h3>
      {says === '' && <Code offer={offer} left={left} />}
      <output className="told">{says}</output>
      <Wrong text={wrong} />
      <p className="actions">
        {!joined && (
          <Button
            className={left === 0 ? 'button main' : 'button'}
            onPress={() => {
              again().then(setWrong, () => undefined);
            }}
          >
            {PAIR.another}
          </Button>
        )}
        <Button className={joined ? 'button main' : 'button'} onPress={done}>
          {joined ? PAIR.next : PAIR.done}
        </Button>
      </p>
    </>
  );
}
