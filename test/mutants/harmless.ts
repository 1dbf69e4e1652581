// Why some seeded faults change nothing that the check could say, per operator. mutants.test.ts asks for a reason for
// each operator of which a mutant is harmless, and for no other; that they are harmless is proved by the reference.
export const HARMLESS: Readonly<Record<string, string>> = {
  'drop-hygiene':
    'in a donning, gloves fresh from the box are rubbed once more; in the invented unit the assistant goes on with the same suit, which the training module allows, and is cleaned before anything else',
  'swap-removals':
    'blower and hood of one powered respirator, which the training module takes off in one step, after the hose is off',
  'swap-put-ons': 'the two items lie nowhere on the same place, so it does not matter which goes on first',
  'wrong-ground': 'the floor that the step means anyway when it names none',
  'wrong-zone':
    'a step short: somebody stays where they are, and no contact is lost or gained. That a room is the wrong one to take a mask off in is not modelled (droplets and air, docs/method.md)',
  'drop-helper':
    'the step can be done alone, and nobody comes close who could bump or be bumped; whether it can be done well alone is not modelled',
  'drop-inspection':
    'an inspection more than published rules ask for; a look only finds a torn glove, and another look follows or came before',
  'drop-call': 'a call more than published rules ask for; speaking touches nothing',
  'drop-opening': 'the clasp of a belt, which its removal then opens by the same hands',
};
