import { describe, expect, it } from 'vitest';
import { bandOf, withinBand } from '../../src/app/places/Look/bands.ts';
import { SETTINGS, type Setting } from '../../src/signs/settings.ts';

describe('a band chosen from the list', () => {
  const numbers = (Object.values(SETTINGS) as Setting[]).filter((setting) => setting.kind === 'number');

  it('stands for a number that lies in it and can be given', () => {
    expect(numbers.length).toBeGreaterThan(4);
    for (const setting of numbers)
      setting.bands.forEach((band, index) => {
        const value = withinBand(setting, index);
        expect(bandOf(setting, value), `${setting.says} ${band.id}`).toBe(band.id);
        expect(value).toBeGreaterThanOrEqual(setting.least);
        expect(value).toBeLessThanOrEqual(setting.most);
      });
  });

  it('is none while nothing is said', () => {
    expect(bandOf(SETTINGS['cold-days'], undefined)).toBeUndefined();
    expect(bandOf(SETTINGS['cold-days'], 0)).toBe('0-3');
  });
});
