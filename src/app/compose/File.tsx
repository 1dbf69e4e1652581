// What stands at the head of the file, and the file itself: to look at, and to save.
import { useMemo } from 'react';
import { Button } from 'react-aria-components';
import { LONGEST } from '../../domain/lengths.ts';
import { KINDS } from '../../domain/procedure.ts';
import { AGENTS } from '../../domain/products.ts';
import { OneOf, Tick, Ticks } from '../parts/Choices.tsx';
import { saveText } from '../parts/save.ts';
import { Scroll } from '../parts/Scroll.tsx';
import { words } from '../words.ts';
import type { Editing } from './editing.ts';
import { fileNameOf, textOf } from './model/draft.ts';
import { changeKind } from './model/people.ts';
import { TextLine } from './parts.tsx';

function Head({ draft, edit }: Editing) {
  const about = (text: string): void => {
    const { about: _, ...rest } = draft;
    edit(text === '' ? rest : { ...rest, about: text }, 'Change what it is about', 'about');
  };
  const agents = (now: ReadonlySet<string>): void => {
    const kept = AGENTS.filter((agent) => now.has(agent));
    if (kept.length > 0) edit({ ...draft, agents: kept }, 'Change the agents');
  };
  return (
    <>
      <div className="fields">
        <TextLine
          label="Version"
          most={LONGEST.version}
          value={draft.version}
          set={(version) => edit({ ...draft, version }, 'Change the version', 'version')}
        />
        <TextLine label="What it is about" most={LONGEST.text} value={draft.about ?? ''} set={about} long />
      </div>
      <OneOf
        label="Kind"
        values={KINDS}
        chosen={draft.kind}
        set={(kind) => edit(changeKind(draft, kind), `Make it a ${words.kind(kind)}`)}
        nameOf={words.kind}
      />
      <Ticks
        label="Must hold against (one at least)"
        values={AGENTS}
        chosen={new Set(draft.agents)}
        set={agents}
        nameOf={words.agent}
      />
      <Tick
        on={draft.invented}
        set={(invented) => edit({ ...draft, invented }, 'Change whether it is invented')}
      >
        Invented, for demonstration
      </Tick>
    </>
  );
}

export function File({ draft, edit }: Editing) {
  const text = useMemo(() => textOf(draft), [draft]);
  const name = fileNameOf(draft);
  return (
    <>
      <section aria-labelledby="about-title">
        <h2 id="about-title">About it</h2>
        <Head draft={draft} edit={edit} />
      </section>
      <section aria-labelledby="file-title">
        <h2 id="file-title">The file</h2>
        <p>
          Exactly what is saved. Comments are not part of a procedure: those of a file that was opened are not
          in it; write notes on steps instead.
        </p>
        <p className="actions">
          <Button className="button main" onPress={() => saveText(name, text, 'application/yaml')}>
            Save as {name}
          </Button>
        </p>
        <Scroll className="file-text" label="Text of the file">
          <pre>
            <code>{text}</code>
          </pre>
        </Scroll>
      </section>
    </>
  );
}
