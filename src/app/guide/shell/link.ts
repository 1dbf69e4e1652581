// Between the observer's window and the displays of the same exit in the same browser: a channel, or the store's own events
// where a browser has no channels. Everything is sent as text, so that both ways carry the same.
export type Listener<Message> = (message: Message) => void;

export interface Link<Message> {
  readonly post: (message: Message) => void;
  readonly listen: (listener: Listener<Message>) => () => void;
}

const NAME = 'doffline-guide-link-';

function overChannel<Message>(name: string): Link<Message> {
  const channel = new BroadcastChannel(name);
  const send = channel.postMessage.bind(channel);
  return {
    post: (message) => send(JSON.stringify(message)),
    listen: (listener) => {
      const hear = ({ data }: MessageEvent<string>): void => listener(JSON.parse(data) as Message);
      channel.addEventListener('message', hear);
      return () => channel.removeEventListener('message', hear);
    },
  };
}

/** The number makes two equal messages two events. */
function overStorage<Message>(name: string, page: Window): Link<Message> {
  let number = 0;
  return {
    post: (message) => {
      number += 1;
      try {
        page.localStorage.setItem(name, JSON.stringify([Date.now(), number, message]));
      } catch {
        // No other window hears it; the display says that nothing comes.
      }
    },
    listen: (listener) => {
      const hear = ({ key, newValue }: StorageEvent): void => {
        if (key !== name || newValue === null) return;
        const [, , message] = JSON.parse(newValue) as [number, number, Message];
        listener(message);
      };
      page.addEventListener('storage', hear);
      return () => page.removeEventListener('storage', hear);
    },
  };
}

const links = new Map<string, Link<unknown>>();

/** One per exit and window. */
export function linkOf<Message>(exit: string, page: Window = window): Link<Message> {
  const name = NAME + exit;
  const known =
    links.get(name) ??
    ('BroadcastChannel' in page ? overChannel<unknown>(name) : overStorage<unknown>(name, page));
  links.set(name, known);
  return known as Link<Message>;
}
