// Times from the labels of the unit's own products: what is written there, who read it, and when, as an entry of the journal.
// The guide keeps them before the published ones from the next exit on; an exit that runs keeps those it began with.
import { useState } from 'react';
import { Link } from 'wouter';
import { PRODUCT_IDS, type ProductId } from '../../../domain/products.ts';
import { NotListed, Who } from '../../journal/Who.tsx';
import { useBar } from '../../journal/useBar.ts';
import { book, useBook } from '../../journal/useBook.ts';
import { Confirm } from '../../parts/Confirm.tsx';
import { useTitle } from '../../parts/useTitle.ts';
import { words } from '../../words.ts';
import { type Span, SPANS, sourceOf } from '../log/times.ts';
import { Field } from './Field.tsx';
import { TIMES } from './labels.ts';

type Typed = Readonly<Record<Span, string>>;
const EMPTY: Typed = { contactSeconds: '', rubSeconds: '', drySeconds: '' };

/** Seconds, nothing, or what cannot be. */
function secondsOf(typed: string): number | null | undefined {
  if (typed.trim() === '') return null;
  const seconds = Number(typed);
  return Number.isInteger(seconds) && seconds > 0 && seconds <= TIMES.most ? seconds : undefined;
}

/** What the journal holds of a product, or that the published time is kept. */
function Held({ product }: { readonly product: ProductId }) {
  const { times, staff } = useBook();
  const held = times[product];
  const spans = held ? SPANS.filter((span) => held[span] !== null) : [];
  if (!held || spans.length === 0) return <p className="quiet">{TIMES.published}</p>;
  return (
    <p>
      {spans.map((span) => `${TIMES.spans[span]}: ${held[span]} s`).join('; ')}{' '}
      <span className="quiet">({sourceOf(held, staff)})</span>
    </p>
  );
}

function Write({ product }: { readonly product: ProductId }) {
  const [typed, type] = useState(EMPTY);
  const [label, setLabel] = useState('');
  const [by, setBy] = useState('');
  const bar = useBar('product.time-recorded');
  const spans = SPANS.map((span) => [span, secondsOf(typed[span])] as const);
  const wrong = spans.some(([, seconds]) => seconds === undefined);
  const said = spans.flatMap(([span, seconds]) =>
    typeof seconds === 'number' ? [`${TIMES.spans[span]} ${seconds} s`] : [],
  );
  const write = async (): Promise<void> => {
    const [contactSeconds = null, rubSeconds = null, drySeconds = null] = spans.map(([, one]) => one);
    const body = { product, contactSeconds, rubSeconds, drySeconds, label: label.trim() };
    await book.write({ by, entries: [{ kind: 'product.time-recorded', body }] });
    type(EMPTY);
    setLabel('');
  };
  return (
    <>
      {SPANS.map((span) => (
        <Field
          key={span}
          label={TIMES.spans[span]}
          hint={TIMES.hint}
          value={typed[span]}
          set={(text) => type({ ...typed, [span]: text })}
        />
      ))}
      <Field label={TIMES.label} value={label} set={setLabel} />
      <Who label={TIMES.who} value={by} set={setBy} />
      {wrong && <p role="alert">{TIMES.wrong}</p>}
      <Confirm
        label={TIMES.write}
        title={TIMES.write}
        sentence={TIMES.sentence(words.product(product), said.join(', '), label.trim())}
        isDisabled={wrong || label.trim() === '' || by === ''}
        bar={bar}
        write={write}
      />
    </>
  );
}

export function TimesPage() {
  useTitle(TIMES.title);
  const [product, choose] = useState<ProductId>(PRODUCT_IDS[0] ?? 'alcohol-hand-rub');
  return (
    <div className="narrow g-home">
      <h1>{TIMES.title}</h1>
      <p>{TIMES.says}</p>
      <dl>
        {PRODUCT_IDS.map((one) => (
          <div key={one}>
            <dt>{words.product(one)}</dt>
            <dd>
              <Held product={one} />
            </dd>
          </div>
        ))}
      </dl>
      <h2>{TIMES.write}</h2>
      <label className="g-field">
        {TIMES.product}
        <select value={product} onChange={({ currentTarget }) => choose(currentTarget.value as ProductId)}>
          {PRODUCT_IDS.map((one) => (
            <option key={one} value={one}>
              {words.product(one)}
            </option>
          ))}
        </select>
      </label>
      <Write key={product} product={product} />
      <NotListed />
      <p className="actions">
        <Link href="/guide">Back to the guide</Link>
      </p>
    </div>
  );
}
