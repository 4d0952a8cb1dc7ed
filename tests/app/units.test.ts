import fc from 'fast-check';
import { afterEach, describe, expect, it } from 'vitest';
import { guessUnits, guessUsual, readPreferences } from '../../src/app/state/preferences.ts';
import { describeDay, describeDayAndYear, describeDayShortly } from '../../src/app/words/dates.ts';
import { WEATHER_WORDS } from '../../src/app/words/ground-weather.ts';
import { describeOutcome, describeSettingValue } from '../../src/app/words/settings.ts';
import {
  figureShown,
  fromShown,
  inUnits,
  METRIC,
  sayCelsius,
  sayDegreesApart,
  sayLength,
  type Units,
  units,
} from '../../src/app/words/units.ts';

const OTHER: Units = { temperature: 'fahrenheit', length: 'inch', days: 'month-first' };

afterEach(() => {
  units.value = METRIC;
});

describe('units as chosen', () => {
  it('leave what the records say as it is in the metric world', () => {
    expect(sayCelsius(-2.4, 1)).toBe('−2.4 °C');
    expect(sayLength('cm', 3)).toBe('3 cm');
    expect(inUnits('the soil is at 8 to 11 °C at 10 cm')).toBe('the soil is at 8 to 11 °C at 10 cm');
  });

  // Fixed points of the scale: water freezes at 32 °F and boils at 212 °F; both scales meet at −40; an inch is 25.4 mm (ISO 80000-3).
  it('turn temperatures and lengths', () => {
    units.value = OTHER;
    expect([0, 100, -40, 37].map((celsius) => sayCelsius(celsius))).toEqual([
      '32 °F',
      '212 °F',
      '−40 °F',
      '99 °F',
    ]);
    expect(sayLength('mm', 25.4)).toBe('1 in');
    expect(sayLength('cm', 5)).toBe('2 in');
    expect(sayDegreesApart(10)).toBe('18 degrees');
  });

  it('are written out in a sentence where the sign would read as another word', () => {
    expect(WEATHER_WORDS.typedHow()).toMatch(/^Temperatures in °C, rain in mm\./);
    units.value = OTHER;
    expect(WEATHER_WORDS.typedHow()).toMatch(/^Temperatures in °F, rain in inches\./);
  });

  it('turn the numbers in a sentence, and no other numbers', () => {
    units.value = OTHER;
    expect(inUnits('the heap reached 30 to 45 °C in 3 weeks')).toBe(
      'the heap reached 86 to 113 °F in 3 weeks',
    );
    expect(inUnits('it needs nights of 10 °C or more')).toBe('it needs nights of 50 °F or more');
    expect(inUnits('at −2 °C leaves freeze')).toBe('at 28 °F leaves freeze');
    expect(inUnits('at 10 cm, in the morning')).toBe('at 4 in, in the morning');
    expect(describeOutcome('soil-celsius', '8-11')).toBe('the soil is at 46 to 52 °F');
    expect(describeSettingValue('soil-celsius', 10)).toBe('50 °F');
  });

  it('come back from the screen as they were, to less than half a tenth', () => {
    units.value = OTHER;
    fc.assert(
      fc.property(fc.double({ min: -30, max: 95, noNaN: true }), (celsius) => {
        expect(Math.abs(fromShown('°C', figureShown('°C', celsius)) - celsius)).toBeLessThan(0.05);
        expect(Math.abs(fromShown('cm', figureShown('cm', celsius)) - celsius)).toBeLessThan(0.05);
      }),
      { seed: 5 },
    );
    // What a thermometer shows in whole degrees is never moved.
    for (let shown = -20; shown <= 200; shown++)
      expect(figureShown('°C', fromShown('°C', shown))).toBeCloseTo(shown, 9);
  });

  it('put the month first where that is chosen', () => {
    units.value = OTHER;
    expect(describeDay('2026-06-18', '2026-01-01')).toBe('Thursday, June 18');
    expect(describeDayAndYear('2026-06-18')).toBe('Thursday, June 18, 2026');
    expect(describeDayShortly('2026-06-18')).toBe('Jun 18');
    units.value = METRIC;
    expect(describeDayAndYear('2026-06-18')).toBe('Thursday 18 June 2026');
  });

  it('are guessed from the language of the browser until somebody says', () => {
    expect(guessUnits('en-US')).toEqual(OTHER);
    expect(guessUnits('en-GB')).toEqual(METRIC);
    expect(guessUnits('de')).toEqual(METRIC);
    expect(guessUnits('no language at all')).toEqual(METRIC);
    const said = JSON.stringify({ units: { temperature: 'celsius', length: 'furlong' } });
    expect(readPreferences(said, guessUsual('Europe/Paris', 'en-US')).units).toEqual({
      ...OTHER,
      temperature: 'celsius',
    });
  });
});
