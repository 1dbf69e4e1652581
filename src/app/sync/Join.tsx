// The field for the code by which a device joins a unit.
import { useState } from 'react';
import { Button, Input, Label, TextField } from 'react-aria-components';
import { codeIn, join } from './joining.ts';
import { JOIN, STAYING } from './labels.ts';
import { Staying } from './Staying.tsx';

export function Join() {
  const [code, setCode] = useState(() => codeIn(window.location.hash));
  const [busy, setBusy] = useState(false);
  const [why, setWhy] = useState<string>();
  const press = (): void => {
    setBusy(true);
    join(code)
      .then((failed) => {
        setWhy(failed);
        setBusy(false);
        if (failed === undefined) window.location.assign('/device');
      })
      .catch((error: unknown) => {
        setWhy(error instanceof Error ? error.message : String(error));
        setBusy(false);
      });
  };
  return (
    <>
      <h3>{JOIN.title}</h3>
      <p className="quiet">{JOIN.says}</p>
      <Staying device="" says={STAYING.before} />
      <div className="actions">
        <TextField className="field" value={code} onChange={setCode} autoComplete="off">
          <Label>{JOIN.code}</Label>
          <Input />
        </TextField>
        <Button className="button main" isDisabled={busy || code.trim() === ''} onPress={press}>
          {JOIN.join}
        </Button>
      </div>
      {why !== undefined && <p role="alert">{why}</p>}
    </>
  );
}
