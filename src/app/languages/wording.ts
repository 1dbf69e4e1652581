// The unit's own sentences in this browser: a file of wording as docs/languages.md describes it, held to its rules before it
// is used, kept for the next visit. Half a wording would be read aloud as if it were all of it, so a file with a fault is
// refused whole.
import { describeDiagnostic, readPlain } from '../../language/index.ts';
import { checkOverrides, describeOverrideFault, type Overrides } from '../../words/index.ts';
import { keptIn } from '../journal/device.ts';
import { speakWith } from '../words.ts';

const KEPT = 'doffline-wording';
const kept = keptIn(() => window.localStorage);

export interface Complaint {
  readonly line: number;
  readonly column: number;
  readonly text: string;
}

interface Read {
  readonly overrides: Overrides;
  readonly complaints: readonly Complaint[];
}

/** Sign-offs in the file count for the command line only: here the journal says who signed what. */
function withoutSignOff(overrides: Overrides): Overrides {
  return Object.fromEntries(
    Object.entries(overrides).map(([language, { steps, sentences }]) => [language, { steps, sentences }]),
  );
}

function readWording(text: string, fileName: string): Read {
  const read = readPlain(text, fileName);
  const unreadable = read.diagnostics.map((one): Complaint => {
    const { wrong, mend } = describeDiagnostic(one);
    return { line: one.line, column: one.column, text: `${wrong} ${mend}` };
  });
  if (unreadable.length > 0) return { overrides: {}, complaints: unreadable };
  const { overrides, faults } = checkOverrides(read.value);
  const complaints = faults.map((fault): Complaint => {
    const { line, column } = read.spanOf(fault.path);
    const { wrong, mend } = describeOverrideFault(fault);
    return { line, column, text: `${wrong} ${mend}` };
  });
  return { overrides: complaints.length > 0 ? {} : withoutSignOff(overrides), complaints };
}

/** Puts a file's sentences in place, where nothing is wrong with it. */
export function takeWording(text: string, fileName: string): readonly Complaint[] {
  const { overrides, complaints } = readWording(text, fileName);
  if (complaints.length > 0) return complaints;
  kept.set(KEPT, text);
  speakWith(overrides);
  return [];
}

export function dropWording(): void {
  kept.set(KEPT, '');
  speakWith({});
}

/** What was in place at the last visit. */
export function restoreWording(): void {
  const text = kept.get(KEPT) ?? '';
  if (text === '') return;
  speakWith(readWording(text, 'wording').overrides);
}
