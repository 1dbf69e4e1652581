// Every protected surface, in groups by how much must go wrong, found by typing or by its address.
import { Finder, Fold } from '../parts/Finder.tsx';
import { useFinder } from '../parts/useFinder.ts';
import { useArrival, useTarget } from '../parts/useTarget.ts';
import type { ViewProps } from '../view.ts';
import { anchorOf, GRADE_TITLES, gradeOf, gradesFound, pointedTo, WORST } from './grades.ts';
import { Verdict } from './Verdict.tsx';

const counted = (count: number): string => `${count} ${count === 1 ? 'surface' : 'surfaces'}`;

export function Surfaces({ judged, choice }: ViewProps) {
  const { procedure } = judged;
  const verdicts = judged.surfaces.filter((one) => choice === 'all' || one.agent === choice);
  const found = (search: string) => gradesFound(procedure, verdicts, search);
  const target = pointedTo(verdicts, useTarget());
  useArrival(target ? anchorOf(target) : '');
  const finder = useFinder({
    groups: (search) => found(search).map(({ name }) => name),
    standing: WORST,
    ...(target
      ? {
          target: {
            group: gradeOf(target),
            isFound: (search) => found(search).some(({ items }) => items.includes(target)),
          },
        }
      : {}),
  });
  const grades = found(finder.search);
  return (
    <section aria-labelledby="surfaces-title">
      <h2 id="surfaces-title">Protected surfaces</h2>
      <p>
        The number is how many slips and circumstances must come together at least. 0 is an open route. A dash
        means that this check found no route, not that there is none. Chances compare procedures; they promise
        nothing.
      </p>
      <Finder
        label="Search in the surfaces"
        what="surfaces"
        found={grades.reduce((sum, { items }) => sum + items.length, 0)}
        all={verdicts.length}
        finder={finder}
      />
      {grades.map(({ name, items }) => (
        <Fold key={name} name={name} count={counted(items.length)} finder={finder}>
          <h3>{GRADE_TITLES[name]}</h3>
          <ul className="verdicts">
            {items.map((verdict) => (
              <Verdict
                key={anchorOf(verdict)}
                verdict={verdict}
                procedure={procedure}
                isTarget={verdict === target}
              />
            ))}
          </ul>
        </Fold>
      ))}
    </section>
  );
}
