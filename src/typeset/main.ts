// The program that sets one paper and ends: a process of its own, so that the server goes on answering meanwhile, can end it
// when it takes too long, and outlives whatever a text does to the compiler. The job comes and the outcome goes as a message.
import { type PaperJob, type PaperOutcome, paperFor } from './job.ts';

async function outcomeOf(job: PaperJob): Promise<PaperOutcome> {
  try {
    return await paperFor(job);
  } catch {
    return { is: 'not-set' };
  }
}

process.once('message', (job) => {
  outcomeOf(job as PaperJob)
    .then((outcome) => process.send?.(outcome, () => process.disconnect()))
    .catch(() => {
      process.exitCode = 1;
    });
});
// Nobody waits any longer.
process.once('disconnect', () => process.exit());
