// The one facade: text -> procedure -> contacts -> conditions -> findings. Each stage is a plain function whose result the
// next one takes. A text with errors ends after the first stage with its diagnostics; everything else is data.
import { acceptanceFindings } from './check/acceptance.ts';
import { type Analysis, analyse } from './check/analysis.ts';
import { coverage, layering } from './check/coverage.ts';
import type { Finding, Measure, SurfaceVerdict } from './check/finding.ts';
import { byDesign, type JudgeContext, oneSlip, open, problemFindings } from './check/judge.ts';
import { scoreBase, withMends } from './check/mends.ts';
import { practice } from './check/practice.ts';
import { hashOf } from './check/replayId.ts';
import { isTangled, type Limit } from './check/limits.ts';
import { surfaceVerdicts } from './check/surfaces.ts';
import { unfinishedFindings } from './check/unfinished.ts';
import { orderAndOmission } from './check/variants.ts';
import { compile } from './contacts/interpret.ts';
import type { Procedure } from './domain/procedure.ts';
import type { Agent } from './domain/products.ts';
import { printProcedure, type ReadResult, readProcedure } from './language/index.ts';

export interface VerifyOptions {
  /** For diagnostics. */
  readonly fileName?: string;
  /** Agents to check against; the procedure's own when absent. */
  readonly agents?: readonly Agent[];
  /** Text of the donning that a doffing undoes. */
  readonly donning?: string;
  /** Mends and variants take most of the time; both are on unless switched off. */
  readonly mends?: boolean;
  readonly variants?: boolean;
  /**
   * Counted combinations, chances and intervals of every surface, and the hash by which findings can be replayed; on unless
   * switched off, as while somebody edits. The hash is empty then.
   */
  readonly surfaces?: boolean;
  /** Day on which accepted departures must not be overdue; the check itself has no clock, and tells of none unless given. */
  readonly day?: string;
}

/** Everything the check says of one procedure. */
export interface Verdict {
  readonly procedure: Procedure;
  /** Hash of the canonical text, the first part of every replay id. */
  readonly hash: string;
  readonly agents: readonly Agent[];
  readonly findings: readonly Finding[];
  readonly surfaces: readonly SurfaceVerdict[];
  readonly analyses: readonly Analysis[];
  readonly measures: readonly { readonly agent: Agent; readonly measure: Measure }[];
  /** What was not worked out, or not all of it; empty for procedures of a usual size. */
  readonly limits: readonly Limit[];
}

export interface Verified {
  readonly read: ReadResult;
  /** Absent when the text has errors. */
  readonly verdict?: Verdict;
}

/** Worst first: what cannot be done, what stands open, departures and bare places, one slip away, what is by design. */
function findingsOf(
  context: JudgeContext,
  first: boolean,
  donning: Procedure | undefined,
): readonly Finding[] {
  const { compiled, agent } = context.analysis;
  // Possibility, practice, coverage and layering are the same against every agent: said once.
  const possible = first
    ? [...problemFindings(compiled), ...(donning ? layering(compiled, compile(donning, agent)) : [])]
    : [];
  const conduct = first ? [...practice(compiled), ...coverage(compiled)] : [];
  return [...possible, ...open(context), ...conduct, ...oneSlip(context), ...byDesign(context)];
}

interface Found {
  readonly findings: readonly Finding[];
  readonly limits: readonly Limit[];
}

function findingsFor(
  context: JudgeContext,
  first: boolean,
  donning: Procedure | undefined,
  options: VerifyOptions,
): Found {
  const { analysis } = context;
  const found = findingsOf(context, first, donning);
  const mended = options.mends === false ? { findings: found, limits: [] } : withMends(analysis, found);
  if (options.variants === false) return mended;
  const variants = orderAndOmission(analysis);
  return {
    findings: [...mended.findings, ...variants.findings],
    limits: [...mended.limits, ...variants.limits].map((limit) => ({ ...limit, agent: analysis.agent })),
  };
}

function exactVerdict(
  procedure: Procedure,
  agents: readonly Agent[],
  options: VerifyOptions,
  donning: Procedure | undefined,
): Verdict {
  const hash = options.surfaces === false ? '' : hashOf(printProcedure(procedure));
  const contexts = agents.map((agent): JudgeContext => ({ analysis: analyse(procedure, agent), hash }));
  const analyses = contexts.map(({ analysis }) => analysis);
  const surfaces =
    options.surfaces === false ? [] : analyses.flatMap((analysis) => surfaceVerdicts(analysis, hash));
  const measures = analyses.map((analysis) => ({
    agent: analysis.agent,
    measure: scoreBase(analysis).measure,
  }));
  const found = contexts.map((context, index) => findingsFor(context, index === 0, donning, options));
  const findings = found.flatMap((one) => one.findings);
  return {
    procedure,
    hash,
    agents,
    findings: [...findings, ...acceptanceFindings(procedure, findings, options.day)],
    surfaces,
    measures,
    analyses,
    limits: found.flatMap(({ limits }) => limits),
  };
}

/** Too many or too tangled slips for an exact answer: what can be said without, headed by a finding that says so. */
function unfinishedVerdict(procedure: Procedure, agents: readonly Agent[], { day }: VerifyOptions): Verdict {
  const findings = unfinishedFindings(procedure, agents);
  return {
    procedure,
    hash: hashOf(printProcedure(procedure)),
    agents,
    findings: [...findings, ...acceptanceFindings(procedure, findings, day)],
    surfaces: [],
    measures: [],
    analyses: [],
    limits: [{ code: 'exact', params: {} }],
  };
}

/** Checks a procedure that has been read. */
export function verifyProcedure(
  procedure: Procedure,
  options: VerifyOptions = {},
  donning?: Procedure,
): Verdict {
  const agents = options.agents ?? procedure.agents;
  try {
    return exactVerdict(procedure, agents, options, donning);
  } catch (error) {
    if (isTangled(error)) return unfinishedVerdict(procedure, agents, options);
    throw error;
  }
}

/** Checks a procedure file's text. Bad text gives diagnostics and no verdict; nothing is thrown for it. */
export function verify(text: string, options: VerifyOptions = {}): Verified {
  const read = readProcedure(text, options.fileName);
  if (!read.procedure) return { read };
  const donning = options.donning === undefined ? undefined : readProcedure(options.donning).procedure;
  return { read, verdict: verifyProcedure(read.procedure, options, donning) };
}
