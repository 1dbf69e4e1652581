// The log: one JSON object a line. It is for whoever runs the machine, and says what was asked of which route and how it
// ended. What may hold personal data never reaches it (trace.ts); errors lose everything but their kind and place.
import { type DestinationStream, type Logger, pino } from 'pino';
import type { Trace } from './trace.ts';

export type Log = Logger;

export const newLog = (to?: DestinationStream): Log =>
  pino(
    { base: null, timestamp: pino.stdTimeFunctions.isoTime, messageKey: 'what' },
    to ?? pino.destination(2),
  );

/** An error's kind and where it happened, without its message: a message may hold what somebody sent. */
export function toldError(error: unknown): { readonly error: string; readonly at: readonly string[] } {
  if (!(error instanceof Error)) return { error: typeof error, at: [] };
  const frames = (error.stack ?? '').split('\n').filter((line) => /^\s+at /.test(line));
  return { error: error.name, at: frames.slice(0, 6).map((line) => line.trim()) };
}

export function logRequest(log: Log, trace: Trace, method: string, status: number): void {
  const { id, route, code, role, device, fault, since } = trace;
  const ms = Math.round((performance.now() - since) * 10) / 10;
  const told = {
    request: id,
    method,
    route,
    status,
    ms,
    ...(code ? { code } : {}),
    ...(role ? { role } : {}),
    ...(device ? { device } : {}),
    ...(fault === undefined ? {} : toldError(fault)),
  };
  if (status >= 500) log.error(told, 'failed');
  else if (status >= 400) log.warn(told, 'refused');
  else log.info(told, 'answered');
}
