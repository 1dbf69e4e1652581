// Asks before something is written for good: says in one sentence what will be written, and writes it only then. Whatever
// goes wrong is said in the same place, and the same press tries again.
import { type ReactNode, type RefObject, useEffect, useId, useRef, useState } from 'react';
import { Button, Dialog, DialogTrigger, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { landOn } from './useLanding.ts';

/** What is said around the act itself. */
interface Act {
  readonly press: string;
  readonly busy: string;
  readonly failed: string;
  /** What becomes of it afterwards. */
  readonly stays: string;
}

/** Most of what is asked about is an entry of the journal. */
const WRITING: Act = {
  press: 'Write it',
  busy: 'Writing …',
  failed: 'Not written',
  stays: 'An entry of the journal stays for good: it cannot be changed or taken back.',
};

interface ConfirmProps {
  /** What the button says that opens it. */
  readonly label: string;
  readonly title: string;
  /** What will be written: one sentence. */
  readonly sentence: string;
  readonly children?: ReactNode;
  readonly act?: Act;
  readonly main?: boolean;
  readonly isDisabled?: boolean;
  /** Why nobody can press it on this device, whatever is filled in: stands beside the button, and is tied to it. */
  readonly bar?: string | undefined;
  /** Ends when it is stored. */
  readonly write: () => Promise<void>;
  /** Has the focus afterwards where the button is gone or cannot be pressed again; the page's content where none is said. */
  readonly then?: RefObject<HTMLElement | null>;
}

interface AskProps extends Pick<ConfirmProps, 'title' | 'sentence' | 'write' | 'then' | 'children' | 'act'> {
  readonly close: () => void;
}

function Ask({ title, sentence, write, then, close, children, act: says = WRITING }: AskProps) {
  const [busy, setBusy] = useState(false);
  const [wrong, setWrong] = useState('');
  useEffect(() => () => landOn(() => then?.current ?? document.querySelector('main')), [then]);
  // Pressed once more while it writes, it does nothing; it is not disabled, or it would lose the focus to nothing.
  const writing = useRef(false);
  const act = async (): Promise<void> => {
    if (writing.current) return;
    writing.current = true;
    setBusy(true);
    setWrong('');
    try {
      await write();
      close();
    } catch (error) {
      setWrong(error instanceof Error ? error.message : String(error));
      setBusy(false);
      writing.current = false;
    }
  };
  return (
    <>
      <Heading slot="title">{title}</Heading>
      <p className="will-write">{sentence}</p>
      {children}
      <p className="quiet">{says.stays}</p>
      <p role="alert" className={wrong ? 'wrong' : ''}>
        {wrong && `${says.failed}: ${wrong}`}
      </p>
      <p className="actions">
        <Button
          className="button main"
          onPress={() => {
            act().catch(() => undefined);
          }}
        >
          {busy ? says.busy : says.press}
        </Button>
        <Button className="button" isDisabled={busy} onPress={close}>
          Go back
        </Button>
      </p>
    </>
  );
}

export function Confirm({ label, main = true, isDisabled = false, bar, ...ask }: ConfirmProps) {
  const why = useId();
  if (bar !== undefined) {
    return (
      <>
        <Button className={main ? 'button main' : 'button'} isDisabled aria-describedby={why}>
          {label}
        </Button>
        <span id={why}>{bar}</span>
      </>
    );
  }
  return (
    <DialogTrigger>
      <Button className={main ? 'button main' : 'button'} isDisabled={isDisabled}>
        {label}
      </Button>
      <ModalOverlay className="veil">
        <Modal className="modal">
          <Dialog role="alertdialog" className="dialog">
            {({ close }) => <Ask {...ask} close={close} />}
          </Dialog>
        </Modal>
      </ModalOverlay>
    </DialogTrigger>
  );
}
