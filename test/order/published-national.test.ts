// The national doffings of the shelf; a file of its own, so that the two run side by side.
import { DOFFINGS, holdPublished } from './published.ts';

holdPublished(
  DOFFINGS.filter((file) => file.startsWith('national')),
  './found/national.md',
);
