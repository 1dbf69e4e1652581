// The whole story of a new user, in an empty browser: a procedure composed from nothing, mended by pressing, its order searched,
// sent, approved by another role and printed; once by keyboard alone and once by finger alone, each with a reload at another
// place. Every act's page is held to the accessibility rules, the screen and the size of a finger; its screenshot is left in
// .cache/screens to be looked at.
import { expect, type Page, test, type TestInfo } from '@playwright/test';
import { finger, type Hand, keys, touchedBy } from './hands.ts';
import { complaintsOf, sideways, tooSmall, violationsOf } from './page.ts';
import {
  acceptTheRest,
  approve,
  begin,
  dress,
  furnish,
  mend,
  order,
  reload,
  send,
  takeOver,
  undoneAndRedone,
  writeSteps,
} from './storyActs.ts';
import { print } from './storyPapers.ts';

type Act = (page: Page, hand: Hand) => Promise<void>;

/** In this order. A reload is an act like any other. */
type Story = readonly (readonly [name: string, ...acts: Act[]])[];

const WRITTEN: Story = [
  ['begun', begin],
  ['dressed', dress],
  ['furnished', furnish],
];
const DECIDED: Story = [
  ['sent', send],
  ['approved', approve],
  ['printed', print],
];

const BY_KEY: Story = [
  ...WRITTEN,
  ['written', writeSteps],
  ['mended', mend, undoneAndRedone, reload, undoneAndRedone],
  ['searched', order],
  ['taken', takeOver],
  ['accepted', acceptTheRest],
  ...DECIDED,
];

const BY_FINGER: Story = [
  ...WRITTEN,
  ['written', writeSteps, reload],
  ['mended', mend, undoneAndRedone],
  ['searched', order],
  ['taken', takeOver, reload],
  ['accepted', acceptTheRest, reload],
  ...DECIDED,
];

async function keepsToTheRules(page: Page, name: string, info: TestInfo): Promise<void> {
  await page.screenshot({ path: `.cache/screens/story-${name}-${info.project.name}.png`, fullPage: true });
  // The rules are the same on the tablet: asked once.
  if (info.project.name === 'desk') expect(await violationsOf(page), name).toEqual([]);
  expect(await sideways(page), name).toBeLessThanOrEqual(0);
  expect(await tooSmall(page), name).toEqual([]);
}

async function tell(page: Page, hand: Hand, story: Story, info: TestInfo): Promise<void> {
  const complaints = complaintsOf(page);
  await page.emulateMedia({ reducedMotion: 'reduce' });
  for (const [name, ...acts] of story) {
    await test.step(name, async () => {
      for (const act of acts) await act(page, hand);
      await keepsToTheRules(page, name, info);
    });
  }
  expect(complaints).toEqual([]);
}

test('the whole story by keyboard alone', async ({ page, hasTouch }, info) => {
  test.skip(hasTouch, 'keys only');
  test.setTimeout(300_000);
  const touched = await touchedBy(page);
  await tell(page, keys(page), BY_KEY, info);
  expect([...touched]).toEqual(['key']);
});

test('the whole story by finger alone', async ({ page }, info) => {
  test.skip(info.project.name !== 'tablet', 'on the tablet only');
  test.setTimeout(300_000);
  const touched = await touchedBy(page);
  await tell(page, finger(page), BY_FINGER, info);
  expect([...touched]).toEqual(['touch']);
});
