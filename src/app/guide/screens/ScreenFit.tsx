// The second display as the unit measured it, and whether capitals of the height that its distance asks for fit it.
import { capitalHeight, fitOf, type UnitSettings } from '../../../guide/index.ts';
import { EvidenceLine } from '../../parts/EvidenceLine.tsx';
import { words } from '../../words.ts';

interface ScreenFitProps {
  readonly unit: UnitSettings;
  readonly set: (unit: UnitSettings) => void;
}

const FIELDS = [
  { name: 'widthMillimetres', label: 'Width of its picture, millimetres' },
  { name: 'heightMillimetres', label: 'Height of its picture, millimetres' },
  { name: 'distanceMetres', label: 'Read from how far, metres' },
] as const;

export function ScreenFit({ unit, set }: ScreenFitProps) {
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
