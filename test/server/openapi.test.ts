// The description of the interface: kept as it is made, whole, and with every route and refusal in it.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { ACCESS } from '../../src/api/access.ts';
import { PROBLEM_CODES } from '../../src/api/problems.ts';
import { ROUTE_NAMES, ROUTES } from '../../src/api/routes.ts';
import { openApiDocument } from '../../src/server/openapi.ts';
import { ROOT } from '../house/imports.ts';
import { ask, start } from './harness.ts';

interface Operation {
  readonly operationId: string;
  readonly description: string;
  readonly responses: Readonly<Record<string, { readonly description: string }>>;
}

interface Description {
  readonly openapi: string;
  readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>;
  readonly components: { readonly schemas: Readonly<Record<string, unknown>> };
}

const made = JSON.parse(JSON.stringify(openApiDocument())) as Description;
const operations = Object.values(made.paths).flatMap((one) => Object.values(one));

test('schema/openapi.json is what the routes say (node scripts/openapi.mjs writes it)', () => {
  expect(JSON.parse(readFileSync(join(ROOT, 'schema/openapi.json'), 'utf8'))).toEqual(made);
  expect(made.openapi).toBe('3.1.0');
});

test('every route is described, with its refusals and who may', () => {
  expect(operations.map(({ operationId }) => operationId).sort()).toEqual([...ROUTE_NAMES].sort());
  for (const name of ROUTE_NAMES) {
    const { path, method, refuses } = ROUTES[name];
    const { responses, description } = made.paths[path]![method]!;
    const told = Object.values(responses).map((one) => one.description);
    for (const code of refuses) expect(told.join('\n')).toContain(`\`${code}\``);
    for (const role of ACCESS[name].people) expect(description).toContain(role);
  }
});

test('every refusal is some route’s', () => {
  const told = operations.flatMap(({ responses }) => Object.values(responses)).map((one) => one.description);
  const missing = PROBLEM_CODES.filter((code) => !told.join('\n').includes(`\`${code}\``));
  expect(missing).toEqual(['newer-format']);
});

test('every reference leads somewhere', () => {
  const references = [...JSON.stringify(made).matchAll(/"\$ref":"#\/components\/schemas\/(\w+)"/g)];
  expect(references.length).toBeGreaterThan(10);
  for (const [, name] of references) expect(made.components.schemas).toHaveProperty(name!);
});

test('the server gives it to anybody', async () => {
  const server = await start();
  const { status, text } = await ask(server.port, { path: '/api/openapi.json' });
  expect(status).toBe(200);
  expect(JSON.parse(text)).toEqual(made);
  await server.stop();
});
