import { type FrameHint, JUDGED_SIDE_PX } from '../../../leaf/judge-frame.ts';
import type { Pixels } from '../../../photo/types.ts';
import { createBridge } from '../../workers/bridge.ts';
import { openWorker } from '../../workers/open-worker.ts';
import type { FrameReply, FrameRequest } from '../../workers/protocol.ts';
import { type SettledHint, settleHint } from './settle-hint.ts';

/** Two frames a second: a hint changes at most once a second, and a telephone stays cool. */
const EVERY_MS = 450;
const LIMIT_MS = 10_000;

/**
 * Judges the film of a running camera and tells each hint that has settled, until it is stopped.
 *
 * @returns stops it
 */
export function judgeFrames(video: HTMLVideoElement, onHint: (hint: FrameHint) => void): () => void {
  const bridge = createBridge<FrameRequest, FrameReply>({
    open: () =>
      openWorker(
        () => new Worker(new URL('../../workers/frame-worker.ts', import.meta.url), { type: 'module' }),
      ),
    limitMs: LIMIT_MS,
  });
  const canvas = document.createElement('canvas');
  let settled: SettledHint = { since: 0 };
  let stopped = false;
  const look = async (): Promise<void> => {
    const frame = document.hidden ? undefined : readFrame(video, canvas);
    if (frame) {
      const outcome = await bridge.ask({ kind: 'judge-frame', frame }, 'frame');
      if (stopped) return;
      if (outcome.state === 'done' && outcome.reply.ok) {
        const before = settled.hint;
        settled = settleHint(settled, outcome.reply.judgement.hint, performance.now());
        if (settled.hint && settled.hint !== before) onHint(settled.hint);
      }
    }
    timer = setTimeout(look, EVERY_MS);
  };
  let timer = setTimeout(look, EVERY_MS);
  return () => {
    stopped = true;
    clearTimeout(timer);
    bridge.close();
  };
}

function readFrame(video: HTMLVideoElement, canvas: HTMLCanvasElement): Pixels | undefined {
  const scale = Math.min(1, JUDGED_SIDE_PX / Math.max(video.videoWidth, video.videoHeight));
  const width = Math.round(video.videoWidth * scale);
  const height = Math.round(video.videoHeight * scale);
  if (width < 1 || height < 1) return undefined;
  canvas.width = width;
  canvas.height = height;
  const context = canvas.getContext('2d', { willReadFrequently: true });
  context?.drawImage(video, 0, 0, width, height);
  const data = context?.getImageData(0, 0, width, height).data;
  return data && { width, height, data };
}
