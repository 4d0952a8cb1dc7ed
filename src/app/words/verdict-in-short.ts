import type { CourseId } from '../../causes/courses.ts';
import { describeDay } from './dates.ts';
import { describeMinutes } from './minutes.ts';
import { type Judged, VERDICT_WORDS } from './verdicts.ts';

/** What each course comes to, as an order. It must fit two lines of a narrow strip; the page says it in full. */
const COURSES_IN_SHORT: Record<CourseId, string> = {
  'stop-the-load': 'spread no more of that load',
  'remove-plants': 'lift the affected plants',
  'clear-at-once': 'clear the affected tops today',
  'pick-off-leaves': 'pick off the worst leaves',
  'pick-off-pests': 'pick the animals off',
  'wash-off-pests': 'wash or wipe them off',
  cover: 'cover with net or fine mesh',
  fence: 'put a fence round the crop',
  'clear-hiding-places': 'clear where slugs hide',
  'keep-warm': 'cover, or bring the pots in',
  'quick-nitrogen': 'one quick nitrogen feed',
  'feed-while-it-rots': 'a little feed every two weeks',
  'supply-element': 'have the soil tested',
  'correct-ph': 'test the soil reaction',
  'water-deeply': 'water deeply, then mulch',
  'let-dry': 'stop watering',
  'flush-salts': 'run plain water through',
  shade: 'shade in the hottest hours',
  shelter: 'put up a windbreak',
  'pot-on': 'plant into more room',
  'replant-cooler': 'lift into finished ground',
  'more-light': 'give it better light',
  'air-and-space': 'thin and ventilate',
  'guard-roots': 'lift the worst, guard the rest',
  'leave-soil-be': 'leave the soil undisturbed',
};

/** The verdict for a narrow strip: two lines at most on a phone. */
export function sayInShort({ verdict }: Judged, today: string): string {
  const { id, check, courses } = verdict;
  const again = `Look again on ${describeDay(verdict.lookAgain, today)}.`;
  if (id === 'watch') return again;
  if (id === 'check' && check) return `${VERDICT_WORDS.check}. It takes ${describeMinutes(check.minutes)}.`;
  const [course] = courses;
  if (id === 'act' && course) return `${VERDICT_WORDS.act}: ${COURSES_IN_SHORT[course] ?? 'see what to do'}.`;
  return `${VERDICT_WORDS[id]}. ${again}`;
}
