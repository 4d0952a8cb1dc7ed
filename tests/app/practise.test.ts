import { afterEach, describe, expect, it, vi } from 'vitest';

const read = vi.hoisted(() => vi.fn());
vi.mock('../../src/leaf/read-leaf.ts', () => ({ readLeaf: read }));
const { practise } = await import('../../src/app/workers/practise.ts');

afterEach(() => {
  vi.useRealTimers();
  read.mockReset();
});

describe('practising before the first photo', () => {
  it('reads drawn leaves, one after another with room between them, and ends', async () => {
    vi.useFakeTimers();
    practise(() => false);
    await vi.advanceTimersByTimeAsync(60);
    expect(read).toHaveBeenCalledTimes(1);
    await vi.runAllTimersAsync();
    expect(read).toHaveBeenCalledTimes(3);
    expect(read.mock.calls[0]![0]).toMatchObject({ width: 320, height: 240 });
  });

  it('gives way as soon as there is work', async () => {
    vi.useFakeTimers();
    let wanted = false;
    read.mockImplementation(() => {
      wanted = true;
    });
    practise(() => wanted);
    await vi.runAllTimersAsync();
    expect(read).toHaveBeenCalledTimes(1);
  });
});
