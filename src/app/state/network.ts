/**
 * The network of signs as the app has it: wanted or not, on the device or not. What fetches and asks it is itself fetched on use
 * (`kept-network.ts`); without it everything works as before.
 */
import { signal } from '@preact/signals';
import type { LeafCrop } from '../../classifier/cut-crop.ts';
import type { SeenByNetwork } from '../../garden/seen-by-network.ts';
import type { PhotoRole } from '../../photo/types.ts';
import { type NetworkFault, preferences } from './preferences.ts';

export type NetworkState =
  | { readonly at: 'off' }
  /** It is being looked up, or opened. */
  | { readonly at: 'opening' }
  /** Bytes that have come, of all. */
  | { readonly at: 'fetching'; readonly done: number; readonly total: number }
  /** On the device; looks at photos. */
  | { readonly at: 'kept' }
  | { readonly at: 'fault'; readonly fault: NetworkFault };

const wanted = preferences.peek().network;

export const network = signal<NetworkState>(
  wanted === 'off' ? { at: 'off' } : wanted === 'on' ? { at: 'opening' } : { at: 'fault', fault: wanted },
);
/** Why there is no network any more, until the person has read it: said once, on whatever page it happened. */
export const networkNews = signal<NetworkFault | undefined>(undefined);

let begun: Promise<void> = Promise.resolve();

/** Looks whether the network is on the device, where it is switched on. Called once, when the app starts. */
export function followNetwork(): void {
  if (wanted !== 'on') return;
  begun = import('./kept-network.ts').then(
    ({ lookUpNetwork }) => lookUpNetwork(),
    () => undefined,
  );
}

/** Can a photo be shown to it now? While it is being fetched photos do not wait for it. */
export async function isNetworkAtHand(): Promise<boolean> {
  await begun;
  return network.value.at === 'kept';
}

/** What the network makes of a leaf; nothing where it is not at hand or fails, which it then says once. */
export async function showNetwork(
  photoId: string,
  crop: LeafCrop,
  role: PhotoRole,
): Promise<SeenByNetwork | undefined> {
  const { lookAtLeaf } = await import('./kept-network.ts');
  return lookAtLeaf(photoId, crop, role);
}
