import { describe, expect, it } from 'vitest';
import { sayInShort } from '../../src/app/words/verdict-in-short.ts';
import { describeVerdict, type Judged, sayLook } from '../../src/app/words/verdicts.ts';
import { COURSES } from '../../src/causes/courses.ts';
import type { NextCheck, RankedCause, Verdict } from '../../src/ranker/types.ts';
import { triage } from '../../src/triage.ts';

const TODAY = '2026-06-04';
const cause = (id: RankedCause['id'], probability: number): RankedCause => ({
  id,
  family: 'food',
  probability,
  low: probability - 0.2,
  high: probability + 0.2,
  priorDecibans: -14,
  for: [],
  against: [],
});
const check: NextCheck = {
  id: 'turn-leaf-over',
  target: { kind: 'check', check: 'turn-leaf-over' },
  minutes: 1,
  waitDays: 0,
  gain: 2,
  turns: 0.3,
  bits: 0.4,
  tellsApart: ['aphids', 'spider-mite'],
};
const judge = (more: Partial<Verdict>, rest: Partial<Judged> = {}): Judged => ({
  verdict: {
    id: 'leave',
    because: { causes: ['magnesium-short'], expectedLoss: { leave: 3.2, watch: 3.1, act: 9.4 } },
    courses: [],
    lookAgain: '2026-06-18',
    recovery: [{ cause: 'magnesium-short', looksLike: 'The newest two leaves should be green.' }],
    cautions: [],
    ...more,
  },
  causes: [cause('magnesium-short', 0.6), cause('aphids', 0.3)],
  nextChecks: [],
  nothingSaid: false,
  ...rest,
});

describe('a verdict in words', () => {
  it('names the likeliest cause where something is done for the sake of another', () => {
    const causes = [cause('birds', 0.9), cause('root-feeders', 0.6)];
    const because = { causes: ['root-feeders'], expectedLoss: {} } satisfies Verdict['because'];
    const why = (id: Verdict['id']) => describeVerdict(judge({ id, because }, { causes }), TODAY).why;
    expect(why('act')[1]).toMatch(
      /^Likelier, but not what calls for this: pigeons and other birds, about 9 in 10/,
    );
    expect(why('leave')).toHaveLength(1);
    const alone = judge(
      { id: 'act', because: { ...because, causes: ['birds', 'root-feeders'] } },
      { causes },
    );
    expect(describeVerdict(alone, TODAY).why).toHaveLength(2);
  });

  it('says what a list shows of a look without tying the verdict to the likeliest cause', () => {
    expect(sayLook({ verdict: 'act', leading: ['rust', 'aphids'] })).toBe(
      'Act now. Likeliest: rust or aphids',
    );
    expect(sayLook({ verdict: 'leave', leading: [] })).toBe('Leave it');
  });

  it('says where to turn and what to take along when nothing known fits best, and only then', () => {
    expect(describeVerdict(judge({}), TODAY).elsewhere).toEqual([]);
    const stranger = judge({}, { causes: [cause('unlisted', 0.5), cause('aphids', 0.2)] });
    const says = describeVerdict(stranger, TODAY).elsewhere.join(' ');
    expect(says).toMatch(/advisory service or a plant clinic/);
    expect(says).toMatch(/roots/);
    expect(says).toMatch(/variety/);
  });

  it('leaves it, and says when to look again and what should be seen by then', () => {
    const said = describeVerdict(judge({}), TODAY);
    expect(said.headline).toBe('Leave it. Look again on Thursday 18 June (in 14 days).');
    expect(said.byThen).toEqual(['The newest two leaves should be green.']);
  });

  it('speaks of recovery and of a poisoned load under an "if" while the cause is not the likeliest by far', () => {
    const unlikely = { causes: [cause('magnesium-short', 0.2), cause('residue-in-compost', 0.1)] };
    expect(describeVerdict(judge({}, unlikely), TODAY).byThen).toEqual([
      'If it is short of magnesium: the newest two leaves should be green.',
    ]);
    const warned = describeVerdict(judge({ cautions: ['residue', 'local-rules'] }, unlikely), TODAY).cautions;
    expect(warned[0]).toMatch(/^If compost, manure or hay from elsewhere went on the bed: until /);
    expect(warned[1]).toMatch(/^Rules/);
    const likely = { causes: [cause('residue-in-compost', 0.7)] };
    expect(describeVerdict(judge({ cautions: ['residue'] }, likely), TODAY).cautions[0]).toMatch(/^Until /);
  });

  it('looks again without doing anything meanwhile', () => {
    const said = describeVerdict(judge({ id: 'watch' }), TODAY);
    expect(said.headline).toBe('Look again on Thursday 18 June (in 14 days). Do nothing until then.');
  });

  it('says it for a narrow strip in so few words that two lines hold them, whatever it is', () => {
    const short = (more: Partial<Verdict>): string => sayInShort(judge(more), TODAY);
    expect(short({ id: 'watch' })).toBe('Look again on Thursday 18 June.');
    expect(short({ id: 'leave' })).toBe('Leave it. Look again on Thursday 18 June.');
    expect(short({ id: 'check', check })).toBe('Check first. It takes 1 minute.');
    expect(short({ id: 'act', courses: ['cover'] })).toBe('Act now: cover with net or fine mesh.');
    // As long as the longest day.
    const most = short({ id: 'leave', lookAgain: '2026-09-23' }).length;
    expect(most).toBe('Leave it. Look again on Wednesday 23 September.'.length);
    for (const { id } of COURSES) {
      const says = short({ id: 'act', courses: [id] });
      expect(says, id).toMatch(/^Act now: [a-z]/);
      expect(says.length, id).toBeLessThanOrEqual(most);
    }
  });

  it('checks first, with what the check takes', () => {
    const said = describeVerdict(judge({ id: 'check', check }), TODAY);
    expect(said.headline).toBe('Check first: turn three leaves over and look along the veins (1 minute).');
    expect(said.checkToMake).toBe('turn-leaf-over');
    expect(said.byThen[0]).toBe('Look again on Thursday 18 June (in 14 days).');
  });

  it('names a day to look again whatever the verdict', () => {
    for (const id of ['leave', 'watch', 'check', 'act'] as const) {
      const { headline, byThen } = describeVerdict(judge({ id, check, courses: ['shade'] }), TODAY);
      expect([headline, ...byThen].join(' '), id).toContain('Look again on Thursday 18 June');
    }
  });

  it('checks first by a question to look at, not only by a check with a name', () => {
    const look: NextCheck = { ...check, id: 'aphids', target: { kind: 'sign', sign: 'aphids' } };
    const said = describeVerdict(judge({ id: 'check', check: look }), TODAY);
    expect(said.headline).toMatch(/^Check first: look for this: aphids .*\(1 minute\)\.$/);
  });

  it('acts now: the first course is the sentence, the others follow', () => {
    const said = describeVerdict(judge({ id: 'act', courses: ['water-deeply', 'shade'] }), TODAY);
    expect(said.headline).toBe('Act now: water deeply now, then less often, and mulch.');
    expect(said.courses).toEqual(['Shade during the hottest hours and water in the morning.']);
  });

  it('names every likely cause that is at work when it acts: those it acts on, and those that are only looked at again', () => {
    const causes = [
      cause('frost', 0.9),
      cause('slugs-snails', 0.8),
      cause('aphids', 0.7),
      cause('rust', 0.3),
    ];
    const ids = causes.map(({ id }) => id);
    const headline = (helped?: readonly RankedCause['id'][], of = ids): string =>
      describeVerdict(
        judge(
          {
            id: 'act',
            courses: ['keep-warm'],
            because: { causes: of, expectedLoss: {}, ...(helped ? { helped } : {}) },
          },
          { causes },
        ),
        TODAY,
      ).headline;
    const warm = 'cover with fleece or a cloche, or bring the pots in, until the nights are warmer.';
    const two = ids.slice(0, 2);
    expect(headline(two, two)).toBe(`Act now on two likely causes (frost; slugs and snails): ${warm}`);
    expect(headline(['frost'], two)).toBe(
      `Act now on one of two likely causes (frost): ${warm} Look again at the rest (slugs and snails).`,
    );
    // What is not likely is left to the reasons.
    expect(headline(['frost', 'aphids', 'rust'])).toBe(
      `Act now on two of three likely causes (frost; aphids): ${warm} Look again at the rest (slugs and snails).`,
    );
    expect(headline(['frost'], ['frost', 'rust'])).toBe(`Act now: ${warm}`);
    // A look that was kept before this was told.
    expect(headline(undefined, two)).toBe(`Act now: ${warm}`);
  });

  it('says of frost and beetles at once, as they are weighed, what it does about each', () => {
    const result = triage({
      photos: [],
      today: '2026-05-10',
      zone: 'north',
      answers: {
        crop: 'potato',
        date: '2026-05-10',
        setting: { 'recent-temperature': 'frost' },
        signs: {
          'blackened@new': 'seen',
          'dull-limp@new': 'seen',
          'after-cold': 'seen',
          sudden: 'seen',
          'whole-bed': 'seen',
          'other-beetles': 'seen',
          'edge-bites@old': 'seen',
          'edge-bites@new': 'seen',
          'ragged-holes@old': 'seen',
        },
      },
    });
    expect(result.verdict.because).toMatchObject({ causes: ['frost', 'leaf-beetles'], helped: ['frost'] });
    expect(describeVerdict(result, '2026-05-10').headline).toMatch(
      /^Act now on one of two likely causes \(frost\): cover .* Look again at the rest \(leaf beetles or weevils\)\.$/,
    );
  });

  it('says what holds until the check is made apart from what may come after it', () => {
    const said = describeVerdict(judge({ id: 'check', check, courses: ['stop-the-load', 'shade'] }), TODAY);
    expect(said.meanwhile).toEqual([expect.stringMatching(/^Stop spreading/)]);
    expect(said.courses).toEqual([expect.stringMatching(/^Shade/)]);
    expect(describeVerdict(judge({ id: 'act', courses: ['stop-the-load'] }), TODAY).meanwhile).toEqual([]);
  });

  it('says what would be done if it came to it, when it is not to be done now', () => {
    expect(describeVerdict(judge({ id: 'watch', courses: ['shade'] }), TODAY).courses).toHaveLength(1);
  });

  it('gives the reasons: what carries it, and what each way out costs', () => {
    expect(describeVerdict(judge({}), TODAY).why).toEqual([
      'Short of magnesium: about 6 in 10 gardens with these signs (4 to 8).',
      'Weighed over all causes, acting now would cost more on average.',
    ]);
  });

  it('speaks of gardens without these signs while nothing has been said', () => {
    expect(describeVerdict(judge({}, { nothingSaid: true }), TODAY).why[0]).toContain(
      'gardens where a plant looks wrong',
    );
  });

  it('tells apart what is to be seen when several causes carry it', () => {
    const recovery = [
      { cause: 'magnesium-short', looksLike: 'The newest leaves are green.' },
      { cause: 'aphids', looksLike: 'No fresh honeydew.' },
    ] as const;
    expect(describeVerdict(judge({ recovery }), TODAY).byThen).toEqual([
      'If it is short of magnesium: the newest leaves are green.',
      'If it is aphids: no fresh honeydew.',
    ]);
  });

  it('names what would change it, and the cautions in full', () => {
    const said = describeVerdict(judge({ cautions: ['sprays'] }, { nextChecks: [check] }), TODAY);
    expect(said.change).toEqual([
      {
        id: 'turn-leaf-over',
        what: 'Turn three leaves over and look along the veins',
        detail: '1 minute; tells aphids from spider mite',
      },
    ]);
    expect(said.cautions[0]).toMatch(/licensed adviser/);
  });

  it('begins with one of the four words, whatever is missing', () => {
    for (const id of ['leave', 'watch', 'check', 'act'] as const)
      expect(describeVerdict(judge({ id }), TODAY).headline).toMatch(
        /^(Leave it|Look again|Check first|Act now)/,
      );
  });
});
