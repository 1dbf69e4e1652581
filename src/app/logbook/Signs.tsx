// Signs beside a visit: a mark and words, never colour alone.
import type { Sign } from '../../journal/views/signs.ts';
import type { Stay } from '../../journal/views/stay.ts';
import { SIGN_LABELS } from './labels.ts';
import { roomName } from './model.ts';

function signText({ code, other }: Sign, stays: readonly Stay[]): string {
  const { mark, text } = SIGN_LABELS[code];
  const there = stays.find(({ visit }) => visit === other);
  return `${mark} ${text(there ? roomName(there.room) : '')}`;
}

interface SignsProps {
  readonly signs: readonly Sign[];
  readonly stays: readonly Stay[];
}

export function Signs({ signs, stays }: SignsProps) {
  if (signs.length === 0) return null;
  return (
    <ul className="plain log-signs">
      {signs.map((sign) => (
        <li
          key={`${sign.code} ${sign.other}`}
          className={SIGN_LABELS[sign.code].grave ? 'log-sign grave' : 'log-sign'}
        >
          {signText(sign, stays)}
        </li>
      ))}
    </ul>
  );
}
