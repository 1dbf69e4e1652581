// The few functions of the logic solver (MiniSat) that the tests use; the package brings no types.

declare module 'logic-solver' {
  export type Formula = object | string;
  export interface Solution {
    getTrueVars(): string[];
  }
  export class Solver {
    require(...formulas: Formula[]): void;
    solve(): Solution | null;
  }
  export function or(...operands: Formula[]): Formula;
  export function and(...operands: Formula[]): Formula;
  export function not(operand: Formula): Formula;
  export function xor(...operands: Formula[]): Formula;
  export const TRUE: string;
  export const FALSE: string;
}
