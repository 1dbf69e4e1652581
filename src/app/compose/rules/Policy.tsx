// The unit's own rules: whether spraying counts, and how far the observer is relied on.
import { type Dependence, DEPENDENCES } from '../../../domain/procedure.ts';
import { type EvidenceId, evidence, evidenceIds } from '../../../evidence/index.ts';
import { Tick } from '../../parts/Choices.tsx';
import { EvidenceLine } from '../../parts/EvidenceLine.tsx';
import type { Editing } from '../editing.ts';
import { changePolicy } from '../model/rules.ts';
import { Select } from '../parts.tsx';

const CHECKERS = evidenceIds.filter((id) => id.startsWith('hep.checker.'));

const isChecker = (id: string): id is EvidenceId => CHECKERS.some((one) => one === id);

function Observer({ draft, edit }: Editing) {
  const { observer } = draft.policy;
  const set = (misses: string, dependence: Dependence): void =>
    edit(
      changePolicy(draft, { observer: misses === '' ? undefined : { misses, dependence } }),
      'Change how far the observer is relied on',
    );
  return (
    <>
      <div className="fields">
        <Select
          long
          label="How often the observer misses a slip that can be seen"
          value={observer?.misses ?? ''}
          none="the observer is not relied on"
          choices={CHECKERS.map((id) => ({ value: id, name: evidence(id).says }))}
          set={(misses) => set(misses, observer?.dependence ?? 'low')}
        />
        {observer && (
          <Select
            label="How far wearer and observer err together (dependence)"
            value={observer.dependence}
            choices={DEPENDENCES.map((one) => ({ value: one, name: one }))}
            set={(dependence) => set(observer.misses, dependence as Dependence)}
          />
        )}
      </div>
      {observer && isChecker(observer.misses) && <EvidenceLine id={observer.misses} />}
    </>
  );
}

export function Policy(props: Editing) {
  const { draft, edit } = props;
  return (
    <section aria-labelledby="policy-title">
      <h2 id="policy-title">The unit’s own rules</h2>
      <Tick
        on={draft.policy.creditSpraying}
        set={(creditSpraying) =>
          edit(changePolicy(draft, { creditSpraying }), 'Change whether spraying counts')
        }
      >
        Spraying counts as cleaning (guidance advises against it)
      </Tick>
      <Observer {...props} />
    </section>
  );
}
