// The screens as they were measured: the second display, and whether capitals of the height that its distance asks for fit
// it; this screen, whose lines are as large as they go.
import { useState } from 'react';
import { capitalHeight, fitOf, type OwnScreen, type UnitSettings } from '../../../guide/index.ts';
import { EvidenceLine } from '../../parts/EvidenceLine.tsx';
import { words } from '../../words.ts';
import { keeper } from '../shell/rooms.ts';
import { OWN_SCREEN } from './labels.ts';

interface ScreenFitProps {
  readonly unit: UnitSettings;
  readonly set: (unit: UnitSettings) => void;
}

const FIELDS = [
  { name: 'widthMillimetres', label: 'Width of its picture, millimetres' },
  { name: 'heightMillimetres', label: 'Height of its picture, millimetres' },
  { name: 'distanceMetres', label: 'Read from how far, metres' },
] as const;

function SecondDisplay({ unit, set }: ScreenFitProps) {
  const { display } = unit;
  const fit = fitOf(display);
  return (
    <fieldset>
      <legend>The second display</legend>
      {FIELDS.map(({ name, label }) => (
        <label key={name} className="g-field">
          {label}
          <input
            type="number"
            min="0.5"
            step="any"
            value={display[name]}
            onChange={(event) => {
              const value = event.currentTarget.valueAsNumber;
              if (value > 0) set({ ...unit, display: { ...display, [name]: value } });
            }}
          />
        </label>
      ))}
      <output className="g-fit">
        Capitals must be {capitalHeight(display.distanceMetres).toFixed(1)} mm high at{' '}
        {display.distanceMetres} m.{' '}
        {fit.fault ? words.guide.fits[fit.fault] : `They fit: up to ${fit.characters} letters in a row.`}
      </output>
      <EvidenceLine id="legibility.capital-angle" />
    </fieldset>
  );
}

/** This screen: kept at once, for every exit on this device. */
function OwnScreenFit() {
  const [screen, setScreen] = useState(keeper.screen);
  const set = (next: OwnScreen): void => {
    setScreen(next);
    keeper.keepScreen(next);
  };
  const { widthMillimetres, distanceMetres } = screen;
  return (
    <fieldset>
      <legend>{OWN_SCREEN.title}</legend>
      <label className="g-field">
        {OWN_SCREEN.width}
        <input
          type="number"
          min="50"
          step="any"
          value={widthMillimetres ?? ''}
          onChange={({ currentTarget: { valueAsNumber } }) =>
            set(valueAsNumber > 0 ? { distanceMetres, widthMillimetres: valueAsNumber } : { distanceMetres })
          }
        />
      </label>
      <label className="g-field">
        {OWN_SCREEN.distance}
        <input
          type="number"
          min="0.5"
          step="any"
          value={distanceMetres}
          onChange={({ currentTarget: { valueAsNumber } }) =>
            valueAsNumber > 0 && set({ ...screen, distanceMetres: valueAsNumber })
          }
        />
      </label>
      <output className="g-fit">{OWN_SCREEN.needs(capitalHeight(distanceMetres), distanceMetres)}</output>
      {widthMillimetres === undefined && <EvidenceLine id="legibility.unmeasured-screen" />}
    </fieldset>
  );
}

export function ScreenFit(props: ScreenFitProps) {
  return (
    <>
      <SecondDisplay {...props} />
      <OwnScreenFit />
    </>
  );
}
