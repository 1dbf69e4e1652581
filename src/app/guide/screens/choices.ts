// Procedures to choose from: approved versions in force for an exit; those, the library and an opened file for a drill.
import { useMemo } from 'react';
import type { Mode } from '../../../guide/index.ts';
import { versionInForce } from '../../../journal/views/versions.ts';
import { useBook } from '../../journal/useBook.ts';
import { LIBRARY, useOpened, useVersionEntries } from '../../library.ts';
import { namesOf } from '../../model/choiceNames.ts';
import { headOf } from '../../model/head.ts';

export interface Choice {
  readonly id: string;
  readonly name: string;
  readonly text: string;
  readonly fileName: string;
  readonly approval?: NonNullable<Mode['approval']>;
}

function useInForce(): readonly Choice[] {
  const { versions, texts } = useBook();
  return useMemo(
    () =>
      Object.keys(versions.procedures).flatMap((procedure): readonly Choice[] => {
        const version = versionInForce(versions, procedure);
        const text = version && texts[version.content];
        if (!version?.approved || text === undefined) return [];
        const { people, on, reviewOn } = version.approved;
        return [
          {
            id: `approved-${procedure}`,
            name: `${headOf(text).title}, version ${version.version}, approved ${on}`,
            text,
            fileName: `${procedure}.yaml`,
            approval: { content: version.content, by: people, on, reviewOn },
          },
        ];
      }),
    [versions, texts],
  );
}

export function useChoices(mode: 'drill' | 'exit'): readonly Choice[] {
  const approved = useInForce();
  const opened = useOpened();
  const ofUnit = useVersionEntries();
  return useMemo(() => {
    if (mode === 'exit') return approved;
    // Those in force stand above already.
    const inForce = new Set(approved.map(({ text }) => text));
    const others = [
      ...(opened ? [opened] : []),
      ...ofUnit.filter(({ text }) => !inForce.has(text)),
      ...LIBRARY,
    ];
    const names = namesOf(others);
    return [
      ...approved,
      ...others.map(({ id, title, kind, text, fileName }) => ({
        id,
        name: `${names.get(id) ?? title} (${kind})`,
        text,
        fileName,
      })),
    ];
  }, [mode, approved, opened, ofUnit]);
}
