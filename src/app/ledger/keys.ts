// Moving in the grid by keys, as the ARIA grid pattern has it: one cell is in the tab order, arrows move it.
import type { KeyboardEvent } from 'react';

type Move = (row: number, column: number, last: number) => readonly [row: number, column: number];

const MOVES: Readonly<Record<string, Move>> = {
  ArrowLeft: (row, column) => [row, column - 1],
  ArrowRight: (row, column) => [row, column + 1],
  ArrowUp: (row, column) => [row - 1, column],
  ArrowDown: (row, column) => [row + 1, column],
  PageUp: (row, column) => [Math.max(0, row - 8), column],
  PageDown: (row, column) => [row + 8, column],
  Home: (row) => [row, 0],
  End: (row, _, last) => [row, last],
};

/** The cell an event came from. */
export function cellAt(target: EventTarget): HTMLElement | null {
  return target instanceof Element ? target.closest<HTMLElement>('td[data-row]') : null;
}

/** Moves the focus; false where the key means nothing here or there is no such cell. */
export function moveIn(table: HTMLElement, from: HTMLElement, event: KeyboardEvent): boolean {
  const move = MOVES[event.key];
  if (!move || event.altKey || event.metaKey) return false;
  const last = (from.parentElement?.children.length ?? 2) - 2;
  const row = event.ctrlKey && event.key === 'Home' ? 0 : Number(from.dataset.row);
  const [toRow, toColumn] = move(row, Number(from.dataset.column), last);
  const to = table.querySelector<HTMLElement>(`[data-row="${toRow}"][data-column="${toColumn}"]`);
  if (!to) return event.key.startsWith('Arrow');
  from.tabIndex = -1;
  to.tabIndex = 0;
  to.focus();
  return true;
}
