// The interface's description in OpenAPI 3.1, made of the table that the server answers from (src/api/routes.ts), so that
// the two cannot differ. Served at /api/openapi.json, and kept as schema/openapi.json.
import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import { ACCESS, type Access, type RouteName } from '../api/access.ts';
import { type ProblemCode, PROBLEMS, problem, TODOS } from '../api/problems.ts';
import { type Route, ROUTE_NAMES, ROUTES } from '../api/routes.ts';

const refusal = z.strictObject({ problem });

/** What every route may refuse, by what it takes and who may ask. */
function usual({ body }: Route, { open, hidden, letIn }: Access): readonly ProblemCode[] {
  return [
    'wrong-host',
    'not-through-proxy',
    'too-many',
    'fault',
    'full',
    'read-only',
    'busy',
    'damaged',
    'replaced',
    'unavailable',
    'foreign-page',
    ...(body ? (['not-json', 'wrong-shape', 'wrong-type', 'too-large'] as const) : []),
    ...(open ? [] : (['not-signed-in', 'not-paired', 'device-revoked'] as const)),
    ...(open ? [] : [hidden ? ('not-found' as const) : ('not-allowed' as const), 'first-password' as const]),
    ...(letIn ? (['not-let-in'] as const) : []),
  ];
}

/** Refusals by status: what each code means and asks for. */
function refusals(route: Route, access: Access) {
  const codes = [...new Set([...route.refuses, ...usual(route, access)])];
  const statuses = [...new Set(codes.map((code) => PROBLEMS[code].status))].sort((a, b) => a - b);
  const described = (code: ProblemCode): string =>
    `- \`${code}\` (${PROBLEMS[code].todo}): ${PROBLEMS[code].says}`;
  return Object.fromEntries(
    statuses.map((status) => [
      status,
      {
        description: codes
          .filter((code) => PROBLEMS[code].status === status)
          .map(described)
          .join('\n'),
        content: { 'application/json': { schema: refusal } },
      },
    ]),
  );
}

function whoMay({ open, people, devices, letIn }: Access): string {
  if (open) return 'Anybody who reaches the server.';
  return [
    people.length > 0 ? `Signed-in people: ${people.join(', ')}.` : '',
    devices.length > 0 ? `Paired devices: ${devices.join(', ')}.` : '',
    letIn ? 'Only once the account is let in to health records.' : '',
  ]
    .filter((part) => part !== '')
    .join(' ');
}

function securityOf({ open, people, devices }: Access): Record<string, string[]>[] {
  if (open) return [];
  return [...(people.length > 0 ? [{ session: [] }] : []), ...(devices.length > 0 ? [{ device: [] }] : [])];
}

function described(name: RouteName) {
  const route: Route = ROUTES[name];
  const access: Access = ACCESS[name];
  const { method, path, does, params, query, body, answer, file = 'application/json' } = route;
  return createRoute({
    method,
    path,
    operationId: name,
    summary: does,
    description: whoMay(access),
    security: securityOf(access),
    request: {
      ...(params ? { params } : {}),
      ...(query ? { query } : {}),
      ...(body ? { body: { required: true, content: { 'application/json': { schema: body } } } } : {}),
    },
    responses: {
      200: { description: 'Done.', content: { [file]: { schema: answer } } },
      ...refusals(route, access),
    },
  });
}

const ABOUT = `The interface of a unit's server. A refusal says in \`todo\` what to do: ${TODOS.join(', ')}.
A request that changes something carries \`Content-Type: application/json\` and comes from the server's own page or from no page.`;

/** The whole description, as a value that can be written as JSON. */
export function openApiDocument(): object {
  const app = new OpenAPIHono();
  for (const name of ROUTE_NAMES) app.openAPIRegistry.registerPath(described(name));
  for (const one of ['session', 'device'] as const)
    app.openAPIRegistry.registerComponent('securitySchemes', one, {
      type: 'apiKey',
      in: 'cookie',
      name: `doffline-${one}`,
      description: 'Over https the cookie’s name begins with __Host-.',
    });
  return app.getOpenAPI31Document({
    openapi: '3.1.0',
    info: { title: 'Doffline', version: '1', description: ABOUT },
  });
}
