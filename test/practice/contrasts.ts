// Where one published sequence departs from another's rule. Each row is a real disagreement between sources (or a rule of
// one source that another does not have), so a departure there is not an error of the file that holds the sequence.
import type { PracticeRuleId } from '../../src/evidence/index.ts';

export interface Contrast {
  readonly rule: PracticeRuleId;
  /** Files in procedures/, without their ending. */
  readonly procedures: readonly string[];
  readonly because: string;
}

export const CONTRASTS: readonly Contrast[] = [
  {
    rule: 'practice.hygiene-after-each-glove-removal',
    procedures: ['everyday-example-1-doffing', 'everyday-example-2-doffing'],
    because:
      'the everyday sequence asks for hygiene between steps only once hands are contaminated, and at the end',
  },
  {
    rule: 'practice.gloves-not-alone-before-gown',
    procedures: ['everyday-example-1-doffing'],
    because: 'the first example takes the gloves first; the study that speaks against it came later',
  },
  {
    rule: 'practice.hygiene-between-items',
    procedures: ['national-helpers-doffing'],
    because: 'the order for helpers is remembered without the disinfection that the wearer’s pages have',
  },
  {
    rule: 'practice.boot-covers-before-garment',
    procedures: [
      'national-n95-coverall-doffing',
      'national-papr-coverall-doffing',
      'national-papr-gown-late-boot-covers-doffing',
    ],
    because:
      'the coverall module takes boot covers after the suit; the gown module and the later guidance do not',
  },
  {
    rule: 'practice.clean-and-dirty-chair-apart',
    procedures: [
      'national-n95-coverall-doffing',
      'national-papr-coverall-doffing',
      'national-papr-gown-late-boot-covers-doffing',
    ],
    because: 'the coverall module uses the marked clean chair for suit, boot covers and shoes',
  },
  {
    rule: 'practice.inspect-before-exit',
    procedures: ['international-coverall-doffing', 'international-gown-doffing'],
    because: 'the international sequence, as remembered, says nothing of what comes before leaving the room',
  },
  {
    rule: 'practice.gloves-disinfected-before-leaving',
    procedures: ['international-coverall-doffing', 'international-gown-doffing'],
    because: 'the international sequence, as remembered, says nothing of what comes before leaving the room',
  },
  {
    rule: 'practice.inspect-inner-gloves',
    procedures: ['international-coverall-doffing', 'international-gown-doffing'],
    because: 'only the training module asks for it',
  },
  {
    rule: 'practice.inspect-at-end',
    procedures: [
      'international-coverall-doffing',
      'international-gown-doffing',
      'national-stable-patient-doffing',
    ],
    because: 'only the training module asks for it',
  },
  {
    rule: 'practice.assistant-for-hood-or-coverall',
    procedures: ['international-coverall-doffing'],
    because: 'the international sequence lets the wearer take the suit off alone',
  },
  {
    rule: 'practice.donning.hygiene-first',
    procedures: ['international-coverall-donning', 'international-gown-donning'],
    because: 'the international sequence, as remembered, puts boots on before hands are cleaned',
  },
];
