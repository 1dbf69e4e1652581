// Sizes and lots of what a donning puts on, offered once before its first line, while the packs are still at hand: the same
// fields as the logbook's own form. Nobody has to read them; what was read is written with the way in.
import { useMemo } from 'react';
import { itemsIn, ItemRows } from '../../logbook/Equipment.tsx';
import type { ItemTyped } from '../../logbook/model.ts';
import { headOf } from '../../model/head.ts';

interface PacksProps {
  /** The procedure's file. */
  readonly choice: { readonly text: string; readonly fileName: string };
  readonly typed: readonly ItemTyped[];
  readonly set: (typed: readonly ItemTyped[]) => void;
}

export function Packs({ choice: { text, fileName }, typed, set }: PacksProps) {
  const names = useMemo(() => itemsIn(text, fileName), [text, fileName]);
  if (headOf(text).kind !== 'donning') return null;
  const known = new Map(typed.map((row) => [row.item, row]));
  const rows = names.map((item) => known.get(item) ?? { item, size: '', lot: '' });
  const others = typed.filter(({ item }) => !names.includes(item));
  return <ItemRows items={[...rows, ...others]} known={new Set(names)} set={set} />;
}
