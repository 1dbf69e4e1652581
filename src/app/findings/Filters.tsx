// Which findings are shown: by agent, kind and severity. Nothing is ever hidden silently: the number left out is said.
import { FINDING_KINDS, type Severity } from '../../check/finding.ts';
import { type Agent, AGENTS } from '../../domain/products.ts';
import type { AgentChoice, Filter } from '../model/findings.ts';
import { OneOf, Ticks } from '../parts/Choices.tsx';
import { words } from '../words.ts';

interface AgentChooserProps {
  /** Agents that the procedure is written for. */
  readonly named: readonly Agent[];
  readonly choice: AgentChoice;
  readonly choose: (choice: AgentChoice) => void;
}

const CHOICES: readonly AgentChoice[] = [...AGENTS, 'all'];

const agentName = (named: readonly Agent[]) => (agent: AgentChoice) => {
  if (agent === 'all') return 'both';
  return named.includes(agent) ? words.agent(agent) : `${words.agent(agent)} (not named by it)`;
};

export function AgentChooser({ named, choice, choose }: AgentChooserProps) {
  return (
    <OneOf label="Checked against" values={CHOICES} chosen={choice} set={choose} nameOf={agentName(named)} />
  );
}

const SEVERITIES: readonly Severity[] = ['error', 'note'];

interface FiltersProps {
  readonly filter: Filter;
  readonly change: (filter: Filter) => void;
  readonly hidden: number;
}

export function Filters({ filter, change, hidden }: FiltersProps) {
  return (
    <details className="filters">
      <summary>Filter findings{hidden > 0 && <span className="badge">{hidden} not shown</span>}</summary>
      <Ticks
        label="Kinds"
        values={FINDING_KINDS}
        chosen={filter.kinds}
        set={(kinds) => change({ ...filter, kinds })}
        nameOf={words.findingKind}
      />
      <Ticks
        label="Severity"
        values={SEVERITIES}
        chosen={filter.severities}
        set={(severities) => change({ ...filter, severities })}
        nameOf={words.severity}
      />
    </details>
  );
}
