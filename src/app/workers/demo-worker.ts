import { openGardenStore } from '../../garden/store/garden-store.ts';
import { DEMO_GARDEN } from '../../garden/store/open-database.ts';
import { readLeaf } from '../../leaf/read-leaf.ts';
import { decodeInBrowser } from '../../photo/decode-in-browser.ts';
import type { Pixels } from '../../photo/types.ts';
import { buildDemo, type SeeLeaf } from '../demo/build-demo.ts';
import { INVENTED_CASES } from '../demo/invent-cases.ts';
import { makeThumbnail } from './make-thumbnail.ts';

export interface DemoRequest {
  /** `YYYY-MM-DD`. */
  readonly today: string;
}
export type DemoNews =
  | { readonly kind: 'leaf'; readonly done: number; readonly of: number }
  | { readonly kind: 'made' }
  | { readonly kind: 'failed'; readonly why: string };

const tell = (news: DemoNews): void => postMessage(news);

function makePicture(pixels: Pixels): Promise<Blob> {
  const canvas = new OffscreenCanvas(pixels.width, pixels.height);
  const drawn = new ImageData(pixels.data as Uint8ClampedArray<ArrayBuffer>, pixels.width, pixels.height);
  canvas.getContext('2d')?.putImageData(drawn, 0, 0);
  return canvas.convertToBlob({ type: 'image/jpeg', quality: 0.9 });
}

async function fillDemo({ today }: DemoRequest): Promise<void> {
  const store = openGardenStore(undefined, DEMO_GARDEN);
  const of = INVENTED_CASES.flatMap(({ looks }) => looks.flatMap(({ photos }) => photos)).length;
  let done = 0;
  const see: SeeLeaf = async (id, drawn, role) => {
    const picture = await makePicture(drawn);
    await store.savePicture(id, picture);
    const { pixels } = await decodeInBrowser(picture);
    const small = await makeThumbnail(pixels);
    if (small) await store.savePicture(`${id}:small`, small);
    const { reading } = readLeaf(pixels, { role });
    done++;
    tell({ kind: 'leaf', done, of });
    return reading;
  };
  await store.saveRecords(await buildDemo(today, see));
}

addEventListener('message', ({ data }: MessageEvent<DemoRequest>) => {
  fillDemo(data).then(
    () => tell({ kind: 'made' }),
    (cause: unknown) => tell({ kind: 'failed', why: String(cause) }),
  );
});
