// Published practice that the steps of a procedure cannot show, each with the reason and with what else in the tool
// takes care of it. Written down so that a procedure without departures is not taken for more than it is.
import type { PracticeRuleId } from '../evidence/index.ts';

interface Unchecked {
  readonly id: PracticeRuleId;
  readonly because: string;
}

const MANNER = 'it is in the manner of the movement, which a step does not record';

export const UNCHECKED: readonly Unchecked[] = [
  {
    id: 'practice.warn-before-headgear',
    because: 'warnings belong to what the observer reads aloud, not to a step',
  },
  {
    id: 'practice.garment-inside-out',
    because: MANNER,
  },
  {
    id: 'practice.garment-not-shaken',
    because: `${MANNER}; the brush against clothes is a slip of every removal`,
  },
  {
    id: 'practice.boot-cover-by-outside',
    because:
      'every way to take a boot cover off holds its outside; sitting has a rule of its own and leg on leg is a slip',
  },
  { id: 'practice.legs-apart', because: `${MANNER}; leg on leg is a slip of every boot and shoe step` },
  { id: 'practice.one-step-at-a-time', because: 'it is how a procedure is read aloud, not what it says' },
  { id: 'practice.apron-rolled-away', because: `${MANNER}; the swing against what lies beneath is a slip` },
  {
    id: 'practice.shirt-tucked',
    because: 'scrubs have no step: whether they are tucked in is seen before donning',
  },
  {
    id: 'practice.area-ready-before-start',
    because: 'a step cannot inspect a room; it belongs to the preparation',
  },
  {
    id: 'practice.soil-off-before-disinfectant',
    because: 'whether there is visible soil is known only in an exit',
  },
  { id: 'practice.no-glove-snap', because: `${MANNER}; the snap is a slip of every glove removal` },
  {
    id: 'practice.ankles-untouched',
    because: 'no step says so; the touch is a slip of every boot and shoe step',
  },
  {
    id: 'practice.tape-tears-nothing',
    because: 'tape is not an item of a procedure, and the source neither asks for it nor advises against it',
  },
  {
    id: 'practice.one-wearer-at-a-time',
    because: 'a procedure is about one exit; two at a time is a matter of the rota',
  },
  {
    id: 'practice.fixtures-cleaned-after',
    because: 'it follows the exit; the check lists what the room is left with',
  },
  {
    id: 'practice.zones-named',
    because: 'it is a matter of the room’s own rules; zones of a procedure have a side only',
  },
  { id: 'practice.bin-not-over-full', because: 'how full a bin is, is a circumstance of the exit' },
  {
    id: 'practice.donning.no-skin-visible',
    because: 'the check reports bare places itself, from what the ensemble covers',
  },
  {
    id: 'practice.donning.no-wrist-gap',
    because: 'length and fit of a glove are not known; the order of cuff and sleeve is',
  },
  {
    id: 'practice.strong-chlorine-not-on-skin',
    because: 'a product on a surface that it does not suit is reported as impossible',
  },
  { id: 'practice.keep-wet-for-label-time', because: 'how long a surface stays wet is a slip of every wipe' },
  {
    id: 'practice.hygiene-at-every-step-who',
    because: 'remembered, not read; hygiene between items is the published rule nearest to it',
  },
  { id: 'practice.practised-with-read-aloud', because: 'it is about training' },
];
