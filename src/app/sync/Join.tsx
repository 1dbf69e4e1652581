// The field for the code by which a device joins a unit.
import { useState } from 'react';
import { Button, Input, Label, TextField } from 'react-aria-components';
import { Link } from 'wouter';
import { codeIn } from '../parts/hashCode.ts';
import { join } from './joining.ts';
import { JOIN, STAYING } from './labels.ts';
import { pairedAs } from './paired.ts';
import { Staying, Unsent } from './Staying.tsx';

export function Join() {
  const paired = pairedAs();
  const [code, setCode] = useState(() => codeIn(window.location.hash, 'pair'));
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
      <p className="quiet">
        {JOIN.says} <Link href="/unit">{JOIN.lead}</Link>
      </p>
      {paired ? <Unsent device={paired.device} /> : <Staying device="" says={STAYING.before} />}
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
