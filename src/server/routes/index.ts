// Every route's handler. The type asks for each line of the table of src/api/access.ts.
import type { Handlers } from '../context.ts';
import { accountRoutes } from './accounts.ts';
import { deviceRoutes } from './devices.ts';
import { entryRoutes } from './entries.ts';
import { healthRoutes } from './health.ts';
import { paperRoutes } from './papers.ts';
import { sessionRoutes } from './session.ts';
import { unitRoutes } from './unit.ts';

export const handlers: Handlers = {
  ...unitRoutes,
  ...sessionRoutes,
  ...accountRoutes,
  ...deviceRoutes,
  ...entryRoutes,
  ...healthRoutes,
  ...paperRoutes,
};
