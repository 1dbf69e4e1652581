// What a slip means, and the other way on: beside the line or under it, in a part that scrolls by itself. However much there is
// to say, it pushes neither the line nor what can be pressed away, and an offer is answered without scrolling.
import { useEffect, useRef } from 'react';
import type { Desk } from './desk.ts';
import { Middle } from './Middle.tsx';
import { OfferActs, OfferText } from './Offer.tsx';
import { Suspects } from './Suspects.tsx';

/** In an emergency its card stands there instead. */
export const hasAside = ({ screen, state }: Pick<Desk, 'screen' | 'state'>): boolean =>
  screen.phase !== 'emergency' && (state.shown.deviations.length > 0 || screen.offer !== undefined);

export function Aside({ desk }: { readonly desk: Desk }) {
  const { screen, state, words } = desk;
  const { line, offer, suspects } = words.guide.labels;
  const at = useRef<HTMLElement>(null);
  const offered = screen.offer?.continuation.id;
  const told = state.shown.deviations.length;
  // Whatever comes new is read from its top.
  useEffect(() => {
    if (offered !== undefined || told > 0) at.current?.scrollTo(0, 0);
  }, [offered, told]);
  const meaning = (
    <Middle label={suspects.after} moreBelow={line.moreBelow} at={at}>
      <OfferText desk={desk} />
      <Suspects desk={desk} />
    </Middle>
  );
  if (!screen.offer) return <div className="g-aside">{meaning}</div>;
  return (
    <section className="g-aside g-offer" aria-label={offer.title}>
      {meaning}
      <OfferActs desk={desk} />
    </section>
  );
}
