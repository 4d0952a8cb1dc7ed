import { afterEach, describe, expect, it, vi } from 'vitest';
import { changeDraft } from '../../src/app/state/change-draft.ts';
import { emptyDraft } from '../../src/app/state/draft.ts';
import { seenAt } from '../../src/app/state/earlier-looks.ts';
import { recordLook } from '../../src/app/state/keep-look.ts';
import type { KeptLook } from '../../src/app/state/kept.ts';
import { laterLook } from '../../src/app/state/later-look.ts';
import { guessUsual, guessZone, readPreferences } from '../../src/app/state/preferences.ts';
import { goTo, hashOf, type Route, readRoute, route } from '../../src/app/state/route.ts';
import { METRIC } from '../../src/app/words/units.ts';
import type { CaseRecord } from '../../src/garden/records.ts';
import { repairRecord } from '../../src/garden/repair-record.ts';
import type { LeafReading } from '../../src/leaf/types.ts';
import { type TriageInput, type TriageResult, triage } from '../../src/triage.ts';

const NOW = '2026-06-18T10:00:00.000Z';

describe('addresses', () => {
  const routes: Route[] = [
    { place: 'walk' },
    { place: 'look' },
    { place: 'look', draft: '3f-9' },
    { place: 'ground', bed: 'long bed / by the shed' },
    { place: 'ground', page: 'batches' },
    { place: 'ground', page: 'batches', batch: '3f/9' },
    { place: 'ground', page: 'weather' },
    { place: 'ground', page: 'normal-leaves' },
    { place: 'ground', page: 'normal-leaves', crop: 'tomato', variety: 'Golden / trial' },
    { place: 'book', caseId: 'a b', look: 'c/d' },
    { place: 'book', page: 'taught' },
    { place: 'book', page: 'recurring' },
    { place: 'book', page: 'recurring', cause: 'rust' },
    { place: 'book', page: 'recurring', cause: 'rust', bed: 'by the/gate', year: '2026' },
    { place: 'book', caseId: 'a b', page: 'ended' },
    { place: 'help' },
  ];
  it.each(routes)('%o leads back to itself', (route) => {
    expect(readRoute(hashOf(route))).toEqual(route);
  });

  it('leads to the Walk from anything it does not know, broken escapes included', () => {
    expect(readRoute('')).toEqual({ place: 'walk' });
    expect(readRoute('#/nowhere/at/all')).toEqual({ place: 'walk' });
    expect(readRoute('#/book/%E0%A4%A')).toEqual({ place: 'book', caseId: '%E0%A4%A' });
  });
});

describe('going to an address', () => {
  afterEach(() => void vi.unstubAllGlobals());

  it('does not take back to a page that the grower has left in this moment', () => {
    const address = { hash: '' };
    const move = (_state: unknown, _title: string, hash: string): void => {
      address.hash = hash;
    };
    vi.stubGlobal('location', address);
    vi.stubGlobal('history', { pushState: move, replaceState: move });
    goTo({ place: 'look', draft: 'shared' });
    expect(address.hash).toBe('#/look/shared');
    // A tap on a link: the browser tells of it only later.
    address.hash = '#/walk';
    goTo({ place: 'look', draft: '3f-9' }, 'replace');
    expect(address.hash).toBe('#/walk');
    address.hash = '#/look/shared';
    goTo({ place: 'look', draft: '3f-9' }, 'replace');
    expect(address.hash).toBe('#/look/3f-9');
    expect(route.value).toEqual({ place: 'look', draft: '3f-9' });
  });
});

describe('preferences', () => {
  afterEach(() => {
    vi.unstubAllGlobals();
    vi.restoreAllMocks();
  });

  it('guess the place once, and again only where the phone has travelled or changed its language', async () => {
    const kept = new Map<string, string>();
    vi.stubGlobal('localStorage', {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => kept.set(key, value),
    });
    vi.stubGlobal('document', {});
    const start = async (language: string, timeZone: string, minutes: number) => {
      vi.stubGlobal('navigator', { language });
      const options = vi
        .spyOn(Intl.DateTimeFormat.prototype, 'resolvedOptions')
        .mockReturnValue({ timeZone } as Intl.ResolvedDateTimeFormatOptions);
      vi.spyOn(Date.prototype, 'getTimezoneOffset').mockReturnValue(minutes);
      vi.resetModules();
      const { preferences } = await import('../../src/app/state/preferences.ts');
      const { zone, units } = preferences.value;
      const asked = options.mock.calls.length;
      vi.restoreAllMocks();
      return { zone, temperature: units.temperature, asked };
    };
    const tasmania = { zone: 'south', temperature: 'celsius' };
    expect(await start('en-AU', 'Australia/Hobart', -600)).toEqual({ ...tasmania, asked: 1 });
    expect(await start('en-AU', 'Australia/Hobart', -600)).toEqual({ ...tasmania, asked: 0 });
    const boston = { zone: 'north', temperature: 'celsius', asked: 1 };
    expect(await start('en-AU', 'America/New_York', 300)).toEqual(boston);
    expect(await start('en-US', 'America/New_York', 300)).toEqual({ ...boston, temperature: 'fahrenheit' });
    // Spoilt, it is guessed anew, not taken for the north.
    kept.set('bedside-usual', '{"here":"en-AU -600 -600","zone":"moon","units":7}');
    expect(await start('en-AU', 'Australia/Hobart', -600)).toEqual({ ...tasmania, asked: 1 });
    expect(await start('en-AU', 'Australia/Hobart', -600)).toEqual({ ...tasmania, asked: 0 });
  });

  it('are made whole from whatever was stored', () => {
    const usual = { theme: 'device', zone: 'north', units: METRIC, showHatching: true, network: 'off' };
    for (const stored of [
      null,
      '',
      '{',
      '[]',
      'null',
      '{"theme":"neon","zone":7,"units":7,"network":"always"}',
    ])
      expect(readPreferences(stored, guessUsual('Europe/London', 'en-GB'))).toEqual(usual);
    expect(
      readPreferences(
        '{"theme":"dusk","zone":"south","showHatching":false,"network":"on"}',
        guessUsual('Europe/London', 'en-GB'),
      ),
    ).toEqual({
      theme: 'dusk',
      zone: 'south',
      units: METRIC,
      showHatching: false,
      network: 'on',
    });
  });

  it('guess the zone from the time zone only while nobody said', () => {
    expect(guessZone('Australia/Hobart')).toBe('south');
    expect(guessZone('America/Argentina/Cordoba')).toBe('south');
    expect(guessZone('America/New_York')).toBe('north');
    expect(guessZone('Asia/Singapore')).toBe('tropics');
    expect(readPreferences('{"zone":"north"}', guessUsual('Pacific/Auckland', 'en-NZ')).zone).toBe('north');
    // What was chosen when it was still called by the half of the earth.
    expect(readPreferences('{"hemisphere":"south"}', guessUsual('Europe/Paris', 'fr')).zone).toBe('south');
  });
});

const result = {
  causes: [
    { id: 'aphids', probability: 0.5 },
    { id: 'virus', probability: 0.3 },
    { id: 'rust', probability: 0.09 },
    { id: 'frost', probability: 0.01 },
  ],
  verdict: { id: 'watch', lookAgain: '2026-06-25' },
  photos: [{ role: 'old' }],
  openQuestions: [{ id: 'x' }],
  knowledge: '7',
} as unknown as TriageResult;

describe('keeping a look', () => {
  const draft = [
    { kind: 'choose-crop', crop: 'kale' } as const,
    { kind: 'add-photos', photos: [{ id: 'p1', file: 'leaf.jpg' }] } as const,
    { kind: 'set-words', words: { bed: ' Long bed ', plant: 'third kale', note: ' windy ' } } as const,
  ].reduce(changeDraft, emptyDraft('d', '2026-06-18'));
  const ids = { caseId: 'c', lookId: 'l' };

  it('holds what was entered, the ranking as it stood, and the version of the knowledge', () => {
    const { kept, look, summary } = recordLook(draft, result, NOW, ids);
    expect(kept).toMatchObject({
      id: 'c',
      bed: 'Long bed',
      plant: 'third kale',
      crop: 'kale',
      openedOn: '2026-06-18',
    });
    expect(look).toMatchObject({ id: 'l', caseId: 'c', date: '2026-06-18', note: 'windy', knowledge: '7' });
    expect(look.answers).toMatchObject({ crop: 'kale', date: '2026-06-18' });
    expect(look.ranking).not.toHaveProperty('photos');
    expect(look.ranking).not.toHaveProperty('openQuestions');
    expect(summary).toEqual({
      id: 'l',
      date: '2026-06-18',
      verdict: 'watch',
      lookAgain: '2026-06-25',
      // What is far from likely is not written over a case for good.
      leading: ['aphids', 'virus'],
      photos: ['p1'],
    });
  });

  it('does not write down a guess of what a photo shows', () => {
    const { look } = recordLook(draft, result, NOW, ids);
    expect(look.photos).toEqual([{ id: 'p1', role: 'unsaid', file: 'leaf.jpg', taps: {} }]);
    const said = changeDraft(draft, { kind: 'set-role', photoId: 'p1', role: 'new' });
    expect(recordLook(said, result, NOW, ids).look.photos).toEqual([
      { id: 'p1', role: 'new', file: 'leaf.jpg', taps: {} },
    ]);
  });

  it('weighs the same when it is opened later, without the network that looked at its photo', () => {
    const network = {
      network: '0123456789abcdef',
      reports: [
        { sign: 'mottled@new', ratio: 4.217 },
        { sign: 'white-powder@new', ratio: 0.2 },
      ],
      logits: [1.5],
      features: [0.25],
      strangeness: 0.8,
    };
    const reading: LeafReading = { role: 'new', trouble: [], leaf: { found: true }, measures: {} };
    const seen = [
      { kind: 'set-role', photoId: 'p1', role: 'new' } as const,
      { kind: 'photo-read', photoId: 'p1', taps: draft.photos[0]!.taps, reading, network } as const,
    ].reduce(changeDraft, draft);
    const { look } = recordLook(seen, result, NOW, ids);
    // Through the store, a backup, another device: text and back.
    const opened = repairRecord(JSON.parse(JSON.stringify(look))) as KeptLook;
    const said: Pick<TriageInput, 'photos' | 'network'> = { photos: [reading], network: network.reports };
    const today = { answers: { ...look.answers }, today: look.date, zone: 'north' } as const;
    const then = triage({ ...said, ...today });
    const later = triage({ ...seenAt(opened), ...today });
    expect(then.findings.filter(({ from }) => from === 'network').length).toBe(2);
    expect(later.findings).toEqual(then.findings);
    expect(later.causes).toEqual(then.causes);
    expect(triage({ photos: [reading], ...today }).causes).not.toEqual(then.causes);
  });

  it('keeps a look also when the weighing did not come through', () => {
    const { look, summary } = recordLook(draft, undefined, NOW, ids);
    expect(look).not.toHaveProperty('ranking');
    expect(summary).toMatchObject({ verdict: '', leading: [] });
  });

  it('leaves the day on which a case was opened alone when a look is added', () => {
    const found: CaseRecord = { ...recordLook(draft, result, NOW, ids).kept, openedOn: '2026-05-01' };
    expect(recordLook(draft, result, NOW, { ...ids, lookId: 'l2' }, found).kept.openedOn).toBe('2026-05-01');
  });

  it('a later look brings crop, names and lasting circumstances along, but no signs and no weather', () => {
    const { kept } = recordLook(draft, result, NOW, ids);
    const next = laterLook('n', '2026-06-25', kept, {
      crop: 'kale',
      variety: 'curly blue',
      setting: { netted: true, 'recent-rain': 'wet' },
      signs: { aphids: 'seen' },
    });
    expect(next).toMatchObject({ caseId: 'c', bed: 'Long bed', plant: 'third kale', begunOn: '2026-06-25' });
    expect(next.answers).toEqual({
      crop: 'kale',
      variety: 'curly blue',
      setting: { netted: true },
      signs: {},
    });
  });

  it('a later look knows where the plant stands, and reads records anew but for what was set aside', () => {
    const where = { bedId: 'b', bed: 'Long bed', plantingId: 'p' };
    const answers = {
      ...draft.answers,
      setting: { netted: true, 'wood-in-root-zone': true },
      recorded: ['wood-in-root-zone'],
      notAsRecorded: ['soil-ph'],
    } as const;
    const { kept, look } = recordLook({ ...draft, where }, result, NOW, ids, undefined, answers);
    expect(kept).toMatchObject({ bedId: 'b', plantingId: 'p' });
    expect(look.answers).toMatchObject({ recorded: ['wood-in-root-zone'], notAsRecorded: ['soil-ph'] });
    const next = laterLook('n', '2026-06-25', { ...kept, bed: 'Long bed' }, look.answers);
    expect(next.where).toEqual(where);
    expect(next.answers.setting).toEqual({ netted: true });
    expect(next.answers.notAsRecorded).toEqual(['soil-ph']);
    // In another bed by now: the case follows.
    const moved = { ...next, where: { bedId: 'other', bed: 'Short bed' } };
    const after = recordLook(moved, result, NOW, { ...ids, lookId: 'l2' }, kept).kept;
    expect(after.bedId).toBe('other');
    expect(after).not.toHaveProperty('plantingId');
  });
});
