// What one hindrance is about: the headings of its findings, or what was accepted and not looked at again by its day, since when and
// by which role.
import type { Procedure } from '../../domain/procedure.ts';
import { daysBetween } from '../../versions/days.ts';
import type { Hindrance } from '../../versions/sending.ts';
import { On } from '../parts/On.tsx';
import { words } from '../words.ts';
import { dueText } from './labels.ts';

interface ToldProps {
  readonly file: Procedure;
  readonly hindrance: Hindrance;
  readonly today: string;
}

function Overdue({ file, hindrance: { overdue = [] }, today }: ToldProps) {
  return (
    <ul>
      {overdue.map((one) => (
        <li key={JSON.stringify(one)}>
          <span lang={words.language}>{words.compare.departure(file, one)}</span>
          {': '}
          accepted by {one.by} on <On day={one.date} />, to be looked at again on <On day={one.review} />,{' '}
          {dueText(daysBetween(today, one.review))}.
        </li>
      ))}
    </ul>
  );
}

export function Told(props: ToldProps) {
  const { file, hindrance } = props;
  if (hindrance.overdue) return <Overdue {...props} />;
  const titles = new Set(hindrance.findings.map((one) => words.finding(file, one).title));
  if (titles.size === 0) return null;
  return (
    <ul lang={words.language}>
      {[...titles].map((title) => (
        <li key={title}>{title}</li>
      ))}
    </ul>
  );
}
