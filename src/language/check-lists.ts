// Checks of what stands around the steps: the stated start, the accepted findings, and the evidence they lean on.
import { evidenceIds } from '../evidence/index.ts';
import { stepIds } from './check-steps.ts';
import type { Context } from './context.ts';
import { checkSurface, surfacesOf } from './surfaces.ts';

const PRACTICE = 'practice.';
const PRACTICE_IDS: readonly string[] = evidenceIds.filter((id) => id.startsWith(PRACTICE));

export function checkStart(context: Context): void {
  const stated = new Set<string>();
  const known = context.file.start ? surfacesOf(context) : [];
  context.file.start?.forEach((entry, index) => {
    const path = ['start', index, 'surface'];
    checkSurface(context, path, entry?.surface, known);
    if (entry?.surface === undefined) return;
    if (stated.has(entry.surface)) context.report.value(path, 'stated-twice', { name: entry.surface });
    stated.add(entry.surface);
  });
}

export function checkAccepted(context: Context): void {
  const { file, report } = context;
  const ids = stepIds(context.steps);
  const known = file.accepted ? surfacesOf(context) : [];
  file.accepted?.forEach((entry, index) => {
    if (!entry) return;
    const path = ['accepted', index];
    const { finding, step, surface, date, review } = entry;
    if (finding?.startsWith(PRACTICE) && !PRACTICE_IDS.includes(finding)) {
      report.name([...path, 'finding'], 'unknown-practice', finding, PRACTICE_IDS, { allowed: [] });
    }
    if (step !== undefined && !ids.includes(step)) report.name([...path, 'step'], 'unknown-step', step, ids);
    checkSurface(context, [...path, 'surface'], surface, known);
    if (date !== undefined && review !== undefined && review < date) {
      report.value([...path, 'review'], 'review-before-date', { date });
    }
  });
}
