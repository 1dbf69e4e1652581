// What a list of procedures calls each of them, so that no two are called the same: the title; of a version in the journal
// always which one it is and its stage; of the rest the version where a title is shared, and the file where that is shared too.
import type { Entry } from '../library.ts';

type Named = Pick<Entry, 'id' | 'title' | 'version' | 'fileName' | 'opened' | 'stage' | 'approval'>;

const OPENED = 'opened from this machine';

const versionText = ({ version }: Named): string => `version ${version ?? 'without a name'}`;

/** 'approved on 2026-03-02, in force'. */
function stageTextOf({ stage = '', approval }: Named): string {
  const on = approval?.is === 'approved' ? approval.on : undefined;
  return on === undefined ? stage : stage.replace('approved', `approved on ${on}`);
}

/** What tells a procedure from others of its title. */
export function apartText(entry: Named): string {
  const more = entry.stage === undefined ? (entry.opened ? OPENED : '') : stageTextOf(entry);
  return [versionText(entry), more].filter((part) => part !== '').join(', ');
}

const sameAs = (names: readonly string[]): ReadonlySet<string> =>
  new Set(names.filter((name, at) => names.indexOf(name) !== at));

/** The name of each by its id. */
export function namesOf(entries: readonly Named[]): ReadonlyMap<string, string> {
  const shared = sameAs(entries.map(({ title }) => title));
  const named = entries.map((entry): readonly [Named, string] => {
    const { title, stage, opened } = entry;
    const whole = stage !== undefined || shared.has(title);
    return [entry, whole ? `${title}, ${apartText(entry)}` : opened ? `${title}, ${OPENED}` : title];
  });
  const still = sameAs(named.map(([, name]) => name));
  return new Map(
    named.map(([{ id, fileName }, name]) => [id, still.has(name) ? `${name} (${fileName})` : name]),
  );
}
