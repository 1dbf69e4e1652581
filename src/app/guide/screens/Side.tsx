// The picture of the step as the exit stands, beside the line and never under it; and the key to its patterns. Where there is no
// room beside, in a tablet held upright, below; on a phone not at all.
import { Picture } from '../../picture/Picture.tsx';
import type { Desk } from './desk.ts';
import { PictureKey } from './PictureKey.tsx';
import type { Pictured } from './usePictured.ts';

interface SideProps {
  readonly desk: Pick<Desk, 'state' | 'words'>;
  readonly pictured: Pictured | undefined;
}

export function Side({ desk: { state, words }, pictured }: SideProps) {
  if (!pictured) return null;
  const { board, recorded } = pictured;
  const { procedure } = state.shown.script.setup;
  const { step, moment } = recorded;
  return (
    <div className="g-side">
      <Picture procedure={procedure} board={board} step={step} moment={moment} alone whole />
      <PictureKey words={words} recorded={recorded} />
    </div>
  );
}
