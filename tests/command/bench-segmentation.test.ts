import { expect, it } from 'vitest';
import { benchScene } from '../../src/command/bench/bench-segmentation.ts';
import { segmentationScenes } from '../../src/command/bench/make-segmentation-scenes.ts';

it('sets the mask beside the one that OpenCV cuts from the same pixels', async () => {
  const row = benchScene(await segmentationScenes().drawn[0]!(0.02), 0.02, 1);
  expect(row.iou).toBeGreaterThan(0.9);
  for (const cut of [row.byTap, row.byRectangle]) {
    if ('failed' in cut) throw new Error(cut.failed);
    expect(cut.ms).toBeGreaterThan(0);
    expect(cut.iou).toBeGreaterThan(0.9);
  }
});
