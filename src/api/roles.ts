// The roles of a unit's people and devices. A person has one; a device has the role of those who record on it, because
// an exit is recorded where there is no network and nobody can be asked.

export const ROLES = ['observer', 'lead', 'stores', 'occupational-health', 'reader'] as const;
export type Role = (typeof ROLES)[number];

/**
 * What an account may do with health records of staff: nothing by its role; nothing yet, because a lead gave it the role, opened it
 * again or knows its first password; or what the role may.
 */
export const HEALTH_ACCESS = ['none', 'waits', 'in'] as const;
export type HealthAccess = (typeof HEALTH_ACCESS)[number];

/** A device that only reads has nothing to record; everybody else may. */
export const RECORDING_ROLES = [
  'observer',
  'lead',
  'stores',
  'occupational-health',
] as const satisfies readonly Role[];
