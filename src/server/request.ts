// What `doffline serve` was asked for, checked: a wish that cannot be is told before anything is opened.
import * as z from 'zod';
import { isName } from './names.ts';
import { blockList } from './reach.ts';

const port = z.int().min(0).max(65_535);
const file = z.string().min(1);

const request = z
  .strictObject({
    port: port.default(4173),
    host: z.string().refine(isName, 'is neither a name nor an address').default('127.0.0.1'),
    data: file.optional(),
    https: z.boolean().default(false),
    cert: file.optional(),
    key: file.optional(),
    /** Names and addresses by which browsers call it. */
    name: z.array(z.string().refine(isName, 'is neither a name nor an address')).default([]),
    /** Addresses of proxies that are believed. */
    behindProxy: z.array(z.string()).default([]),
    trustPort: port.optional(),
    demo: z.boolean().default(false),
    newLead: z.boolean().default(false),
  })
  .refine(({ cert, key }) => (cert === undefined) === (key === undefined), '--cert and --key go together')
  .refine(({ cert, https }) => cert === undefined || !https, '--https makes a certificate: leave out --cert')
  .refine(
    ({ behindProxy, https, cert }) => behindProxy.length === 0 || (!https && cert === undefined),
    '--behind-proxy: the proxy has the certificate; leave out --https and --cert',
  )
  .refine(
    ({ behindProxy, name }) => behindProxy.length === 0 || name.length > 0,
    '--behind-proxy needs --name, the name by which browsers call the proxy',
  );

export type ServeRequest = z.infer<typeof request>;

/** Throws an Error that says what is wrong. */
export function readRequest(asked: unknown): ServeRequest {
  const read = request.safeParse(asked);
  if (!read.success) {
    const [issue] = read.error.issues;
    const [option] = issue?.path ?? [];
    throw new Error(`${option === undefined ? '' : `--${String(option)} `}${issue?.message ?? ''}`);
  }
  blockList(read.data.behindProxy);
  return read.data;
}
