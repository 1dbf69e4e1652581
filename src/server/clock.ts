// The server's time in an answer. A device's clock is compared with it and written down, never put right.

export type Clock = () => Date;

export interface Time {
  readonly now: string;
  readonly offset: number | null;
}

/** `sentAt` is what the device's clock said when it sent the request. */
export function timeOf(now: Date, sentAt: string | undefined): Time {
  const offset = sentAt === undefined ? null : Date.parse(sentAt) - now.getTime();
  return { now: now.toISOString(), offset };
}
