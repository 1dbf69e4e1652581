// Opening a procedure file from this machine, by button or by dropping it. It is read in the page and goes nowhere.
import { useState } from 'react';
import { Button, DropZone, FileTrigger, Text } from 'react-aria-components';
import { useLocation } from 'wouter';
import { OPENED_ID, openText } from '../library.ts';

/** Far above any procedure; larger files are something else. */
const MOST_BYTES = 2_000_000;

export function OpenFile() {
  const [, go] = useLocation();
  const [wrong, setWrong] = useState('');
  const take = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    if (file.size > MOST_BYTES) {
      setWrong(`${file.name} is larger than a procedure can be. Check that it is the right file.`);
      return;
    }
    try {
      openText(file.name, await file.text());
      go(`/procedure/${OPENED_ID}/steps`);
    } catch {
      setWrong(`${file.name} could not be read. Check that it is still there and may be opened.`);
    }
  };
  const report = () => setWrong('The file could not be read.');
  return (
    <>
      <DropZone
        className="drop"
        onDrop={(event) => {
          const dropped = event.items.find((item) => item.kind === 'file');
          dropped?.getFile().then(take).catch(report);
        }}
      >
        <Text slot="label">Drop a procedure file here, or</Text>
        <FileTrigger
          acceptedFileTypes={['.yaml', '.yml', 'text/yaml', 'application/yaml']}
          onSelect={(files) => {
            take(files?.[0]).catch(report);
          }}
        >
          <Button className="button">Open a file …</Button>
        </FileTrigger>
        <p className="quiet">It stays on this machine: the page reads it and sends it nowhere.</p>
      </DropZone>
      <p role="alert" className={wrong ? 'wrong' : ''}>
        {wrong}
      </p>
    </>
  );
}
