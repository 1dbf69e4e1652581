// How long the intervals take: 10,000 posterior draws of every slip's chance, each through the exact pass for every
// protected surface.
import { analyse } from '../src/check/analysis.ts';
import { DRAWS, drawnIntervals } from '../src/check/intervals.ts';
import { report, timed } from './harness.ts';
import { SUBJECTS } from './subjects.ts';

const cases = SUBJECTS().map(({ name, procedure }) => {
  const analysis = analyse(procedure, 'enveloped');
  return {
    name: `${name}: ${DRAWS} draws, ${analysis.judged.length} surfaces`,
    work: () => drawnIntervals(analysis),
    goal: 'under 100 ms',
    processor: true,
  };
});
report(timed(cases, { warm: 4, runs: 15 }));
