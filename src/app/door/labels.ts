// What a page says at its door, whoever it is for.
import { LEAST_DIFFERENT, SHORTEST_PASSWORD } from '../../api/passwordRule.ts';

export const DOOR = {
  plain:
    'This address is not https: others on the network can read what you type and what is shown, passwords too.',
  asking: 'Asking the server …',
  askAgain: 'Ask again',
  signOut: 'Sign out',
  soon: 'Nobody has used this page for a while. In a minute it signs out and forgets what it shows. Press any key or touch the page to stay.',
  unattended: 'Nobody used this page for ten minutes. It has signed out and shows nothing any more.',
  leftOpen:
    'This page shows nothing any more, but the server did not answer: the session may still be open there. It ends 30 minutes after the last request. Close the browser.',
} as const;

export const PASSWORD_RULES = `${SHORTEST_PASSWORD} characters or more, ${LEAST_DIFFERENT} of them different, without your name or the unit’s.`;

export const FORM = { mend: 'Not sent. Mend what is marked.' } as const;

export const SIGN_IN = {
  title: 'Sign in',
  name: 'Name',
  password: 'Password',
  press: 'Sign in',
  empty: 'Type your name and your password.',
  shared: 'On a shared device do not let the browser keep the password.',
  ended: 'The session has ended. Sign in again. What was typed and not written is gone.',
  first: {
    title: 'Choose your own password',
    says: 'You still have the password that you were given. Choose your own first.',
    old: 'Password that you were given',
    own: 'Your own password',
    press: 'Change the password',
    empty: 'Type both passwords.',
  },
} as const;
