// Which procedure a draft is to become a version of. Kept beside the drafts in the browser; a draft without it becomes a
// procedure of its own.
import { keptIn } from '../journal/device.ts';

const kept = keptIn(() => window.localStorage);
const keyOf = (draft: string): string => `doffline-lineage-${draft}`;

export const lineageOf = (draft: string): string | undefined => kept.get(keyOf(draft));
export const setLineage = (draft: string, procedure: string): void => kept.set(keyOf(draft), procedure);
