// `npm test`: everything that must hold, unattended. Runs every stage even after one has failed, names those that
// did, and ends with the tests' totals alone on a line. `--checks` runs only those that need no test.
import { ensureInstalled } from './install.mjs';

/** @typedef {import('./stages.mjs').Outcome} Outcome */

/**
 * @param {import('./stages.mjs').Stage} stage
 * @returns {Promise<Outcome>}
 */
async function runStage(stage) {
  console.log(`\n=== ${stage.name}`);
  const started = Date.now();
  /** @type {Outcome} */
  const outcome = await stage.run().catch((/** @type {unknown} */ error) => ({
    status: /** @type {const} */ ('failed'),
    note: error instanceof Error ? error.message : String(error),
  }));
  const seconds = ((Date.now() - started) / 1000).toFixed(1);
  console.log(
    `=== ${stage.name}: ${outcome.status}${outcome.note ? `, ${outcome.note}` : ''} (${seconds} s)`,
  );
  return outcome;
}

/** @param {readonly (readonly [string, Outcome])[]} results */
function summarise(results) {
  console.log('\n=== result');
  for (const status of /** @type {const} */ (['skipped', 'failed'])) {
    for (const [name, outcome] of results) {
      if (outcome.status === status)
        console.log(`${status}: ${name}${outcome.note ? ` (${outcome.note})` : ''}`);
    }
  }
  for (const [name, { failures = [] }] of results) {
    for (const failure of failures) console.log(`failed: ${name}: ${failure}`);
  }
  const tests = results.map(([, outcome]) => outcome.tests ?? { passed: 0, failed: 0 });
  const passed = tests.reduce((sum, one) => sum + one.passed, 0);
  const failed = tests.reduce((sum, one) => sum + one.failed, 0);
  console.log(`${passed} passed, ${failed} failed`);
}

async function main() {
  try {
    ensureInstalled();
  } catch (error) {
    console.error(error instanceof Error ? error.message : String(error));
    return 1;
  }
  // Only now: the stages' own imports may need what was just installed.
  const { CHECKS, STAGES } = await import('./stages.mjs');
  /** @type {[string, Outcome][]} */
  const results = [];
  for (const stage of process.argv.includes('--checks') ? CHECKS : STAGES) {
    results.push([stage.name, await runStage(stage)]);
  }
  summarise(results);
  return results.some(([, outcome]) => outcome.status === 'failed') ? 1 : 0;
}

process.exitCode = await main();
