/** Has the network learn from the garden's photos, in a worker of its own. Loaded on use. */
import { signal } from '@preact/signals';
import { NETWORK_ID } from '../../classifier/network-file.ts';
import type { OwnMark } from '../../garden/own-head-record.ts';
import { garden } from './garden.ts';
import { keepOwnHead } from './keep-own-head.ts';
import { cases, forgetUntil, type KeptLook, nowStamp, store, tryRead } from './kept.ts';
import { openNetworkWorker } from './kept-network.ts';
import { type GatheredExamples, gatherExamples } from './leaf-examples.ts';
import { teachingCases } from './learning.ts';
import { zone } from './zone.ts';

export type LearningState =
  | { readonly at: 'rest' }
  /** Share that is done, 0 to 1. */
  | { readonly at: 'learning'; readonly share: number }
  | { readonly at: 'stopped' | 'failed' | 'not-kept' };

/** Goes on while the person is elsewhere in the app. */
export const leafLearning = signal<LearningState>({ at: 'rest' });

/** The photos that can teach now; `undefined` where the store cannot be read. */
export async function readExamples(): Promise<GatheredExamples | undefined> {
  const settled = teachingCases(cases.value ?? [], forgetUntil.value);
  const normalLeaves = garden.value?.normalLeaves ?? [];
  return tryRead(async () => {
    const withLooks = [];
    for (const one of settled)
      withLooks.push({ settled: one, looks: (await store.listLooks(one.id)) as KeptLook[] });
    return gatherExamples({ cases: withLooks, normalLeaves, zone: zone.value });
  });
}

let stop: (() => void) | undefined;

/** Stops learning; what was learnt before stays. */
export const stopLearning = (): void => stop?.();

/** Learns from these photos and keeps it. One at a time. */
export async function learnFrom({ examples }: GatheredExamples): Promise<void> {
  if (stop) return;
  leafLearning.value = { at: 'learning', share: 0 };
  const marks = await askWorker(examples);
  stop = undefined;
  if (typeof marks === 'string') {
    leafLearning.value = { at: marks };
    return;
  }
  const isKept = await keepOwnHead({
    network: NETWORK_ID,
    learntAt: nowStamp(),
    photos: examples.length,
    plantings: new Set(examples.map(({ planting }) => planting)).size,
    marks: marks.map(rounded),
  });
  leafLearning.value = { at: isKept ? 'rest' : 'not-kept' };
}

/** More digits than a fit can be sure of only make the record long. */
const DIGITS = 6;

const rounded = (mark: OwnMark): OwnMark =>
  JSON.parse(
    JSON.stringify(mark, (_, value: unknown) =>
      typeof value === 'number' ? Number(value.toPrecision(DIGITS)) : value,
    ),
  ) as OwnMark;

function askWorker(
  examples: GatheredExamples['examples'],
): Promise<readonly OwnMark[] | 'stopped' | 'failed'> {
  const worker = openNetworkWorker();
  return new Promise((resolve) => {
    const settle = (outcome: readonly OwnMark[] | 'stopped' | 'failed'): void => {
      worker.close();
      resolve(outcome);
    };
    stop = () => settle('stopped');
    worker.listen(
      ({ reply }) => {
        if (reply.ok && reply.kind === 'learning')
          leafLearning.value = { at: 'learning', share: reply.share };
        else settle(reply.ok && reply.kind === 'learnt' ? reply.marks : 'failed');
      },
      () => settle('failed'),
    );
    worker.post({ number: 1, request: { kind: 'learn', examples } });
  });
}
