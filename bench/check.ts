// How long the check takes: finding kinds 1 to 4 and 6 (what is impossible, open or one slip away with its route, the
// barriers and counted combinations of every protected surface, practice, chances), from a procedure in memory and a
// cold diagram. No mends and no variants: those are bench/variants.ts. Each stage is also timed alone, on what the
// stages before it left. A check remembers what steps do among the same people in the same room (performer.ts); every run
// here is of another room, so that it remembers nothing, but for those that say so.
import { type Analysis, analyse } from '../src/check/analysis.ts';
import { eventChances } from '../src/check/chances.ts';
import { byDesign, type JudgeContext, oneSlip, open, problemFindings } from '../src/check/judge.ts';
import { practice } from '../src/check/practice.ts';
import { compile } from '../src/contacts/interpret.ts';
import type { Procedure } from '../src/domain/procedure.ts';
import type { Agent } from '../src/domain/products.ts';
import { leastEvents } from '../src/engine/barriers.ts';
import { chancesOf } from '../src/engine/chance.ts';
import { countsOf } from '../src/engine/cutSets.ts';
import { Families } from '../src/engine/families.ts';
import { propagate } from '../src/engine/propagate.ts';
import { type Case, report, timed } from './harness.ts';
import { type Subject, SUBJECTS } from './subjects.ts';

const AGENT: Agent = 'enveloped';
const GOAL = 'under 10 ms';

function counts({ families, judged }: Analysis) {
  return judged.map((root) => countsOf(families, families.minimal(root)));
}

function chances({ compiled, diagram, judged }: Analysis) {
  return chancesOf(diagram, judged, eventChances(compiled.plan.events, compiled.procedure.policy));
}

const findings = (context: JudgeContext) => [...open(context), ...oneSlip(context), ...byDesign(context)];

let rooms = 0;

/** The same in another room: the file says of a surface that is not there that it is uncontaminated. */
function elsewhere(procedure: Procedure): Procedure {
  rooms += 1;
  const state = { surface: `room.nowhere-${rooms}.surface`, state: 'uncontaminated' } as const;
  return { ...procedure, start: [...procedure.start, state] };
}

function check(procedure: Procedure): unknown {
  const analysis = analyse(procedure, AGENT);
  const context = { analysis, hash: '0000000' };
  return [
    problemFindings(context.analysis.compiled),
    findings(context),
    practice(analysis.compiled),
    leastEvents(analysis.diagram, analysis.judged),
    counts(analysis),
    chances(analysis),
  ];
}

function stages({ name, procedure }: Subject): readonly Case[] {
  const compiled = compile(procedure, AGENT);
  const analysis = analyse(procedure, AGENT);
  const context = { analysis, hash: '0000000' };
  const stage = (what: string, work: () => unknown): Case => ({ name: `${name}: of it, ${what}`, work });
  return [
    stage('contacts', () => compile(elsewhere(procedure), AGENT)),
    stage('contacts, remembered', () => compile(procedure, AGENT)),
    stage('conditions', () => propagate(compiled.plan)),
    stage('least barriers', () => leastEvents(analysis.diagram, analysis.judged)),
    stage('combinations counted', () => counts({ ...analysis, families: new Families(analysis.diagram) })),
    stage('findings with routes', () => findings(context)),
    stage('practice', () => practice({ ...analysis.compiled, procedure: { ...procedure } })),
    stage('chances', () => chances(analysis)),
  ];
}

const size = ({ name, procedure }: Subject): string => {
  const analysis = analyse(procedure, AGENT);
  const { plan } = analysis.compiled;
  const found = findings({ analysis, hash: '0000000' }).length;
  return (
    `${name}: ${plan.steps.length} steps, ${plan.surfaces.length} surfaces, ${plan.events.length} slips and ` +
    `circumstances, ${analysis.diagram.count} nodes made, ${found} findings of kinds 2 and 3`
  );
};

const subjects = SUBJECTS();
const rows = subjects.flatMap((subject) => [
  // What a command pays once, while nothing is compiled; then what an edit or the next file pays.
  ...timed(
    [
      {
        name: `${subject.name}: the first check of a process`,
        work: () => check(elsewhere(subject.procedure)),
      },
    ],
    {
      warm: 0,
      runs: 1,
    },
  ),
  ...timed(
    [
      {
        name: `${subject.name}: check`,
        work: () => check(elsewhere(subject.procedure)),
        goal: GOAL,
        processor: true,
      },
      { name: `${subject.name}: check, contacts remembered`, work: () => check(subject.procedure) },
    ],
    { warm: 150, runs: 60 },
  ),
  ...timed(stages(subject), { warm: 10, runs: 40 }),
]);
report(rows, subjects.map(size));
