// The most memory that the checks take: the process's peak resident set, each subject in a process of its own. What Node
// itself takes is told beside it.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { analyse } from '../src/check/analysis.ts';
import { tryVariants, variantEdits } from '../src/check/variants.ts';
import { verifyProcedure } from '../src/verify.ts';
import { hundred } from './hundred.ts';
import { ordered, report, type Row } from './harness.ts';
import { longest } from './subjects.ts';

const variants = (): void => {
  const procedure = hundred();
  tryVariants(analyse(procedure, 'enveloped'), variantEdits(procedure.steps.length));
};

const SUBJECTS: Readonly<Record<string, () => unknown>> = {
  'Node alone': () => undefined,
  'longest published procedure: whole check, one agent': () =>
    verifyProcedure(longest().procedure, { agents: ['enveloped'] }),
  '100 steps, three people: check without mends and variants': () =>
    verifyProcedure(hundred(), { agents: ['enveloped'], mends: false, variants: false }),
  '100 steps, three people: all variants': variants,
};

function peakOf(name: string): Row {
  const env = { ...process.env, BENCH_SUBJECT: name };
  const done = spawnSync(process.execPath, [fileURLToPath(import.meta.url)], { encoding: 'utf8', env });
  if (done.status !== 0) throw new Error(`${name}: ${done.stderr}`);
  return { name, samples: [Number(done.stdout.trim())], unit: 'MB' };
}

const subject = process.env.BENCH_SUBJECT;
if (subject === undefined) report(ordered(Object.keys(SUBJECTS)).map(peakOf));
else {
  SUBJECTS[subject]?.();
  console.log(process.resourceUsage().maxRSS / 1024);
}
