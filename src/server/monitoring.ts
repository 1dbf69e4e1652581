// For whoever watches the machine: is it well (/health), and counts (/metrics). Counts go to this machine alone, or to who
// has the token of DOFFLINE_METRICS_TOKEN.
import { timingSafeEqual } from 'node:crypto';
import type { Hono } from 'hono';
import type { Context } from './context.ts';
import type { Env } from './interface.ts';
import { Refusal, refusalOf } from './refusal.ts';
import { fingerprint } from './secrets.ts';

async function failingOf({ records, journal }: Context): Promise<string | undefined> {
  try {
    await records.all('select id from @unit');
    await journal.head();
    return undefined;
  } catch (error) {
    return refusalOf(error).code;
  }
}

const LOOPBACK = /^(127\.\d+\.\d+\.\d+|::1)$/;

const same = (one: string, other: string): boolean =>
  timingSafeEqual(Buffer.from(fingerprint(one)), Buffer.from(fingerprint(other)));

function mayCount({ metricsToken, reach }: Context, peer: string, header: string | undefined): boolean {
  if (metricsToken !== undefined) return same(header ?? '', `Bearer ${metricsToken}`);
  return reach().proxies === undefined && LOOPBACK.test(peer);
}

/** Seconds since the process started, and its memory. */
const gauges = () =>
  [
    ['doffline_up_seconds', 'Since the server started.', Math.round(process.uptime())],
    ['doffline_memory_bytes', 'Resident memory of the process.', process.memoryUsage.rss()],
  ] as const;

export function addMonitoring(app: Hono<Env>, context: Context): void {
  app.get('/health', async (http) => {
    http.env.trace.route = 'health';
    const failing = await failingOf(context);
    if (failing === undefined) return http.json({ status: 'ok' });
    return http.json({ status: 'failing', code: failing }, 503);
  });

  app.get('/metrics', async (http) => {
    http.env.trace.route = 'metrics';
    if (!mayCount(context, http.env.arrival.peer, http.req.header('authorization')))
      throw new Refusal('not-found');
    const well = (await failingOf(context)) === undefined ? 1 : 0;
    const told = [...gauges(), ['doffline_store_well', '1 while the data can be read.', well] as const];
    return http.text(context.metrics.text(told), 200, {
      'Content-Type': 'text/plain; version=0.0.4; charset=utf-8',
    });
  });
}
