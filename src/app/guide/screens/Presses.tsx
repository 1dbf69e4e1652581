// What can be pressed at this moment, always in the same places, and what the wearer told at the end.
import { QUESTIONS, REPLIES } from '../../../domain/guiding.ts';
import type { Press } from '../../../guide/index.ts';
import { Act } from './Act.tsx';
import type { Desk } from './desk.ts';
import { useTroubled } from './useRun.ts';

export function Presses({ desk, next }: { readonly desk: Desk; readonly next: Press | undefined }) {
  const { screen, words, press, open, state } = desk;
  const { presses, line } = screen;
  // Whoever goes on unsaved already is not made to wait again at each line.
  const troubled = useTroubled(screen) || state.adrift;
  const { guide } = words;
  const has = (name: (typeof presses)[number]): boolean => presses.includes(name);
  const question = line.question;
  return (
    <div className="g-presses">
      <div className="g-presses-next">
        {next && (
          <Act kind="main" keys="PageDown" press={() => press(next)}>
            {guide.presses[next.is]}
          </Act>
        )}
        {has('resume') && (
          <Act kind="main" keys="r" press={() => press({ is: 'resume' })}>
            {guide.presses.resume}
          </Act>
        )}
        {has('return') && (
          <Act kind={next ? 'plain' : 'main'} keys="r" press={() => press({ is: 'return' })}>
            {guide.presses.return}
          </Act>
        )}
      </div>
      <div className="g-presses-more">
        {has('answer') &&
          question !== undefined &&
          REPLIES.map((reply) => (
            <Act
              key={reply}
              kind={reply === 'no' ? 'plain' : 'wrong'}
              press={() => press({ is: 'answer', question, reply })}
            >
              {guide.replies[reply]}
            </Act>
          ))}
        {has('start-timer') && next?.is !== 'start-timer' && (
          <Act press={() => press({ is: 'start-timer' })}>{guide.presses['start-timer']}</Act>
        )}
        {has('not-seen') && (
          <Act keys="o" press={() => press({ is: 'not-seen' })}>
            {guide.presses['not-seen']}
          </Act>
        )}
        {screen.stalled && has('retry') && (
          <Act kind="main" press={() => press({ is: 'retry' })}>
            {guide.presses.retry}
          </Act>
        )}
        {has('go-on') && troubled && <Act press={() => press({ is: 'go-on' })}>{guide.presses['go-on']}</Act>}
        {has('slip') && (
          <Act kind="wrong" keys="w" press={() => open('wrong')}>
            {guide.labels.wrong.press}
          </Act>
        )}
        {has('go-early') && <Act press={() => open('early')}>{guide.presses['go-early']}</Act>}
        {has('emergency') && (
          <Act kind="wrong" keys="e" press={() => open('emergencies')}>
            {guide.presses.emergency}
          </Act>
        )}
      </div>
      {has('stop') && (
        <Act kind="stop" keys="s" press={() => press({ is: 'stop' })}>
          {guide.presses.stop}
        </Act>
      )}
    </div>
  );
}

/** What the wearer said yes to at the end, and the card that belongs to it. */
export function Told({ desk }: { readonly desk: Desk }) {
  const { state, words, press } = desk;
  const yes = QUESTIONS.filter(({ id }) => ['yes', 'not-sure'].includes(state.shown.replies[id] ?? ''));
  if (yes.length === 0 || desk.screen.phase === 'emergency') return null;
  return (
    <ul className="plain g-list" aria-label={words.guide.labels.told}>
      {yes.map(({ id, opens }) => (
        <li key={id}>
          {words.guide.questions[id]} <b>{words.guide.replies[state.shown.replies[id] ?? 'yes']}</b>
          {opens && (
            <Act kind="wrong" press={() => press({ is: 'emergency', emergency: opens })}>
              {words.guide.emergencies[opens]}
            </Act>
          )}
        </li>
      ))}
    </ul>
  );
}
