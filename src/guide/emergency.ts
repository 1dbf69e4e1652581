// An emergency's card: the unit's own plan and phone list first, then the published first actions where they come from,
// and what is timed. The observer stays out of the room; who goes in is named by the plan.
import {
  actionEvidence,
  type EmergencyActionId,
  type EmergencyId,
  emergencyOf,
} from '../domain/emergencies.ts';
import { evidenceNumber } from '../evidence/index.ts';
import type { EvidenceId } from '../evidence/index.ts';
import type { Language } from '../words/index.ts';
import { wordsFor } from '../words/index.ts';
import { level } from './level.ts';
import type { Screenful } from './rows.ts';
import type { Script } from './script.ts';
import { languagesOf, type Setup, type UnitPlan } from './setup.ts';
import type { TimerSpec } from './timers.ts';

export type CardItem =
  | { readonly from: 'unit'; readonly text: string }
  | { readonly from: 'published'; readonly action: EmergencyActionId; readonly evidence: EvidenceId };

export interface Card {
  readonly emergency: EmergencyId;
  readonly phones: UnitPlan['phones'];
  /** Absent where the unit's plan names nobody. */
  readonly rescuer?: string;
  readonly items: readonly CardItem[];
  readonly rinse?: TimerSpec;
}

const MINUTE = 60;

/** What is timed in an emergency, by the unit's card or the published record. */
export function rinseOf({ unit: { plan } }: Setup, id: EmergencyId): TimerSpec | undefined {
  const timer = { id: `${id}-rinse`, kind: 'rinse' } as const;
  const own = plan?.cards[id]?.rinseMinutes;
  if (plan && own !== undefined) return { ...timer, seconds: own * MINUTE, source: plan.title };
  const { rinse } = emergencyOf(id);
  return rinse && { ...timer, seconds: evidenceNumber(rinse) * MINUTE, evidence: rinse };
}

export function cardOf(setup: Setup, id: EmergencyId): Card {
  const { plan } = setup.unit;
  const own = plan?.cards[id]?.actions ?? [];
  const rinse = rinseOf(setup, id);
  return {
    emergency: id,
    phones: plan?.phones ?? [],
    ...(plan?.rescuer === undefined ? {} : { rescuer: plan.rescuer }),
    items: [
      ...own.map((text): CardItem => ({ from: 'unit', text })),
      ...emergencyOf(id).actions.map(
        (action): CardItem => ({ from: 'published', action, evidence: actionEvidence(action) }),
      ),
    ],
    ...(rinse ? { rinse } : {}),
  };
}

/** One screen of a card: of which of its items, and its rows in each language in use. */
export interface CardPage {
  readonly item: number;
  readonly texts: Readonly<Partial<Record<Language, Screenful>>>;
}

/** The card screen by screen, as it is read aloud. */
export function pagesOf({ setup, fit }: Script, id: EmergencyId): readonly CardPage[] {
  const languages = languagesOf(setup);
  const say =
    (item: CardItem) =>
    (language: Language): string =>
      item.from === 'unit' ? item.text : wordsFor(language, setup.unit.wording).guide.actions[item.action];
  return cardOf(setup, id).items.flatMap((item, index) => {
    const columns = level(languages.map(say(item)), fit.characters);
    return (columns[0] ?? []).map((_, at): CardPage => {
      const texts = languages.map((language, tongue) => [language, columns[tongue]?.[at] ?? []] as const);
      return { item: index, texts: Object.fromEntries(texts) };
    });
  });
}
