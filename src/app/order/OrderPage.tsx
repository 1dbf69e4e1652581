// A better order for a procedure or a draft, and one thing in place of another: two views of one page, so that an answer
// stays while the other view is looked at.
import type { Remote } from 'comlink';
import { useState } from 'react';
import { Link } from 'wouter';
import { NoDraft, NotFound } from '../pages/NotFound.tsx';
import { useTitle } from '../parts/useTitle.ts';
import { words } from '../words.ts';
import type { Ordered, Searcher, Swapped } from './result.ts';
import { type OrderQuestion, Search } from './Search.tsx';
import type { Wanted } from './Settings.tsx';
import { type Source, useDraftSource, useLibrarySource } from './source.ts';
import { Swap, type SwapQuestion } from './Swap.tsx';
import { useRun } from './useRun.ts';

const VIEWS = [
  { view: 'search', name: 'Better order' },
  { view: 'swap', name: 'Another item or product' },
] as const;
type View = (typeof VIEWS)[number]['view'];

const order = (searcher: Remote<Searcher>, { procedure, limits }: OrderQuestion): Promise<Ordered> =>
  searcher.order(procedure, limits);

const swap = (
  searcher: Remote<Searcher>,
  { procedure, from, to, limits }: SwapQuestion,
): Promise<Swapped | undefined> => searcher.swap(procedure, from, to, limits);

interface BodyProps {
  readonly source: Source;
  readonly view: View;
}

function Body({ source, view }: BodyProps) {
  const { procedure } = source;
  const [chosen, change] = useState<Wanted>();
  const ordering = useRun(order);
  const swapping = useRun(swap);
  const wanted: Wanted = chosen ?? { agent: procedure?.agents[0] ?? 'enveloped', time: '30', free: false };
  if (!procedure) {
    return (
      <p role="alert">
        It has errors, so there is no order to search yet. <Link href={source.home}>See where they are.</Link>
      </p>
    );
  }
  const props = { source, procedure, wanted, change };
  return view === 'search' ? <Search {...props} runner={ordering} /> : <Swap {...props} runner={swapping} />;
}

interface PageProps {
  readonly source: Source;
  readonly base: string;
  readonly view: View;
}

function Page({ source, base, view }: PageProps) {
  const { title, home, procedure } = source;
  const name = VIEWS.find((one) => one.view === view)?.name ?? '';
  useTitle(`${name}: ${title}`);
  return (
    <div className="order">
      <h1>{name}</h1>
      <p className="tags">
        <Link href={home} className="inline-link order-of">
          {title}
        </Link>
        {source.isDraft && <span className="badge">Draft</span>}
        {procedure && <span className="badge">{words.kind(procedure.kind)}</span>}
        {procedure?.invented && <span className="badge invented">Invented, for demonstration</span>}
      </p>
      <nav className="tabs" aria-label="Views of this page">
        {VIEWS.map((one) => (
          <Link
            key={one.view}
            href={`${base}/${one.view}`}
            {...(one.view === view ? { 'aria-current': 'page' as const } : {})}
          >
            {one.name}
          </Link>
        ))}
      </nav>
      <Body source={source} view={view} />
    </div>
  );
}

const viewOf = (text: string): View => (text === 'swap' ? 'swap' : 'search');

interface OrderPageProps {
  readonly id: string;
  readonly view: string;
}

function OfLibrary({ id, view }: OrderPageProps) {
  const source = useLibrarySource(id);
  if (!source) return <NotFound what={`The procedure “${id}”`} />;
  return <Page source={source} base={`/order/procedure/${id}`} view={viewOf(view)} />;
}

function OfDraft({ id, view }: OrderPageProps) {
  const source = useDraftSource(id);
  if (!source) return <NoDraft />;
  return <Page source={source} base={`/order/draft/${id}`} view={viewOf(view)} />;
}

export function OrderPage({ from, id, view }: OrderPageProps & { readonly from: string }) {
  if (from === 'draft') return <OfDraft key={id} id={id} view={view} />;
  return from === 'procedure' ? <OfLibrary key={id} id={id} view={view} /> : <NotFound />;
}
