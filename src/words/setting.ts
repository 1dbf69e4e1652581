// What of a procedure its sentences need.
import type { Procedure } from '../domain/procedure.ts';

export type Setting = Pick<Procedure, 'kind' | 'people' | 'zones' | 'fixtures' | 'start' | 'steps'>;
