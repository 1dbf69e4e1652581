// The measure before and after, weightiest figure first, each with what it rests on. Better and worse are said by sign and
// word; what is nought both times is named below, not left out silently.
import type { Measure } from '../../check/finding.ts';
import type { FigureWords } from '../../words/index.ts';
import { StatusBadge } from '../parts/Badge.tsx';
import { words } from '../words.ts';

const TURNS: Readonly<Record<FigureWords['turn'], readonly [sign: string, word: string]>> = {
  better: ['▼', 'lower'],
  worse: ['▲', 'higher'],
  same: ['=', 'the same'],
};

function Line({ figure }: { readonly figure: FigureWords }) {
  const { name, before, after, turn, slight, status } = figure;
  const [sign, word] = TURNS[turn];
  return (
    <tr className={`turn-${turn}`}>
      <th scope="row">
        {name} {status && <StatusBadge status={status} />}
      </th>
      <td>{before}</td>
      <td>
        {after}{' '}
        <span className="turn">
          <span aria-hidden="true">{sign} </span>
          {slight ?? word}
        </span>
      </td>
    </tr>
  );
}

interface FiguresProps {
  readonly caption: string;
  readonly before: Measure;
  readonly after: Measure;
  /** Headings of the two columns. */
  readonly heads: readonly [string, string];
}

const isNought = ({ before, turn }: FigureWords): boolean => turn === 'same' && /^0\b(?![.,])/.test(before);

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

export function Figures({ caption, before, after, heads }: FiguresProps) {
  const all = words.order.figures(before, after);
  const shown = all.filter((figure) => !isNought(figure));
  const nought = all.filter(isNought);
  return (
    <>
      <div className="table-scroll">
        <table className="compare-table figures">
          <caption>{caption}</caption>
          <thead>
            <tr>
              <th scope="col">Figure</th>
              <th scope="col">{heads[0]}</th>
              <th scope="col">{heads[1]}</th>
            </tr>
          </thead>
          <tbody>
            {shown.map((figure) => (
              <Line key={figure.figure} figure={figure} />
            ))}
          </tbody>
        </table>
      </div>
      {nought.length > 0 && (
        <p className="quiet">Nought both times: {nought.map(({ name }) => lower(name)).join('; ')}.</p>
      )}
    </>
  );
}
