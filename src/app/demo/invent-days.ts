import { dayAfter } from '../../days/days.ts';
import { RECORDS_SCHEMA, type Stamp } from '../../garden/records.ts';

/** The day so many days before (negative: after) `today`, `YYYY-MM-DD`. */
export const dayBefore = (today: string, days: number): string => dayAfter(today, -days);

/** A stamp of the demo, as of nine in the morning of a day. */
export const demoStamp = (id: string, day: string): Stamp & { readonly demo: true } => ({
  id: `demo-${id}`,
  schema: RECORDS_SCHEMA,
  changedAt: `${day}T09:00:00.000Z`,
  demo: true,
});
