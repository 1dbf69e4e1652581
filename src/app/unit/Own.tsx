// Changing one's own password, whatever one's role.
import type { InsideProps } from '../door/Door.tsx';
import { OwnPassword } from '../door/SignIn.tsx';
import { OWN } from './leadLabels.ts';

export function Own({ guest: { account }, keeper }: InsideProps) {
  return (
    <details>
      <summary>{OWN.title}</summary>
      <OwnPassword name={account.name} words={OWN} change={keeper.changePassword} says={keeper.says} />
    </details>
  );
}
