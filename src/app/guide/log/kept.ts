// What this browser keeps beside the journal in its simple store: the unit's own settings and plan for the guide, and how
// large this screen is. No names of people.
import type { OwnScreen, UnitSettings } from '../../../guide/index.ts';

export interface Keeper {
  readonly unit: () => UnitSettings;
  /** Whether it is kept now; false where there is no room or no leave. */
  readonly keepUnit: (unit: UnitSettings) => boolean;
  /** This device's own screen; kept apart, because settings of the unit may be taken to another device. */
  readonly screen: () => OwnScreen;
  readonly keepScreen: (screen: OwnScreen) => boolean;
}

/** A 24-inch screen on the wall, read from two metres, until the unit measures its own. */
const USUAL_UNIT: UnitSettings = {
  display: { widthMillimetres: 531, heightMillimetres: 299, distanceMetres: 2 },
  languages: {},
};

/** The wearer reads it from the doffing area, until the unit says otherwise. */
const USUAL_SCREEN: OwnScreen = { distanceMetres: 2 };

const SCREEN = 'doffline-guide-screen';
const UNIT = 'doffline-guide-unit';

type Box = Pick<Storage, 'getItem' | 'setItem'>;

export function keeperIn(box: () => Box): Keeper {
  const read = (key: string): unknown => {
    try {
      const text = box().getItem(key);
      return text === null ? undefined : JSON.parse(text);
    } catch {
      return undefined;
    }
  };
  const write = (key: string, value: unknown): boolean => {
    try {
      box().setItem(key, JSON.stringify(value));
      return true;
    } catch {
      return false;
    }
  };
  return {
    unit: () => ({ ...USUAL_UNIT, ...(read(UNIT) as Partial<UnitSettings> | undefined) }),
    keepUnit: (unit) => write(UNIT, unit),
    screen: () => ({ ...USUAL_SCREEN, ...(read(SCREEN) as Partial<OwnScreen> | undefined) }),
    keepScreen: (screen) => write(SCREEN, screen),
  };
}
