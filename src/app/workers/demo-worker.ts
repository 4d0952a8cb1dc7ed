import seen from 'virtual:demo-photos';
import type { GardenRecord } from '../../garden/records.ts';
import { openGardenStore } from '../../garden/store/garden-store.ts';
import { DEMO_GARDEN } from '../../garden/store/open-database.ts';
import { buildDemo } from '../demo/build-demo.ts';
import { INVENTED_CASES } from '../demo/invent-cases.ts';
import { inventGround } from '../demo/invent-ground.ts';
import { inventTrials } from '../demo/invent-trials.ts';
import { photosOfLook } from '../demo/list-photos.ts';
import type { SeenPhoto } from '../demo/seen-photo.ts';

/** Several workers share the cases; the first one lays out the ground too. */
export interface DemoRequest {
  /** `YYYY-MM-DD`. */
  readonly today: string;
  /** Which of the workers this is, from 0, and how many there are. */
  readonly worker: number;
  readonly workers: number;
}
export type DemoNews =
  | { readonly kind: 'case'; readonly of: number }
  | { readonly kind: 'made' }
  | { readonly kind: 'failed'; readonly why: string };

const tell = (news: DemoNews): void => postMessage(news);

const store = openGardenStore(undefined, DEMO_GARDEN);

async function keepPicture({ id, jpeg }: SeenPhoto): Promise<void> {
  const bytes = Uint8Array.from(atob(jpeg), (letter) => letter.charCodeAt(0));
  const picture = new Blob([bytes], { type: 'image/jpeg' });
  await store.savePicture(id, picture);
  // It is as small as a small copy already.
  await store.savePicture(`${id}:small`, picture);
}

/** Leaves were drawn and read when the app was built; what they and the answers come to is weighed here, for today's dates. */
async function fillDemo({ today, worker, workers }: DemoRequest): Promise<void> {
  const photos = new Map(seen.map((photo) => [photo.id, photo]));
  const shipped = (id: string): SeenPhoto => {
    const photo = photos.get(id);
    if (!photo) throw new Error(`no photo ${id} was shipped`);
    return photo;
  };
  const cases = INVENTED_CASES.filter((_, place) => place % workers === worker);
  const kept = cases
    .flatMap(({ id, looks }) => looks.flatMap((look, place) => photosOfLook(id, place, look)))
    .map(({ id }) => keepPicture(shipped(id)));
  const records: GardenRecord[] = worker === 0 ? [...inventGround(today), ...inventTrials(today)] : [];
  for (const followed of buildDemo(today, (id) => shipped(id).reading, cases)) {
    records.push(...followed);
    tell({ kind: 'case', of: INVENTED_CASES.length });
  }
  await Promise.all(kept);
  await store.saveRecords(records);
}

addEventListener('message', ({ data }: MessageEvent<DemoRequest>) => {
  fillDemo(data).then(
    () => tell({ kind: 'made' }),
    (cause: unknown) => tell({ kind: 'failed', why: String(cause) }),
  );
});
