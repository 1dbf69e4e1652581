// What is typed into a form of the server's: what is wrong with it by the page's own reading, and what the server refused, each at
// its field. A refusal is forgotten as soon as something is changed.
import { useState } from 'react';
import { FORM } from './labels.ts';

export type Faults<Draft> = { readonly [Key in keyof Draft]?: string };

export interface Drafted<Draft> {
  readonly draft: Draft;
  readonly put: (change: Partial<Draft>) => void;
  /** What to say beside a field; empty where nothing is wrong or nobody has tried yet. */
  readonly wrong: (field: keyof Draft, tried: boolean) => string;
  /** What to say below the fields where something is missing. */
  readonly missing: string;
  /** The server refused what stands in this field. Gives what to say below the fields. */
  readonly refuse: (field: keyof Draft, says: string) => string;
  readonly clear: () => void;
}

export function useDraft<Draft extends object>(
  empty: Draft,
  faultsOf: (draft: Draft) => Faults<Draft>,
): Drafted<Draft> {
  const [draft, setDraft] = useState(empty);
  const [refused, setRefused] = useState<Faults<Draft>>({});
  const faults = faultsOf(draft);
  return {
    draft,
    put: (change) => {
      setDraft((now) => ({ ...now, ...change }));
      setRefused({});
    },
    wrong: (field, tried) => refused[field] ?? (tried ? faults[field] : undefined) ?? '',
    missing: Object.keys(faults).length > 0 ? FORM.mend : '',
    refuse: (field, says) => {
      setRefused({ [field]: says } as Faults<Draft>);
      return FORM.mend;
    },
    clear: () => {
      setDraft(empty);
      setRefused({});
    },
  };
}
