import { day, isObject, number, oneOf, optional, text } from './loose.ts';

/** Home tests of ripeness (`MATURITY_TESTS` of the pot tests says how each is made). */
export const RIPENESS_WAYS = ['radish-pots', 'water-extract', 'self-heating'] as const;
export type RipenessWay = (typeof RIPENESS_WAYS)[number];

/** What came out, as it was read when the numbers were put in. `unclear`: neither; `invalid`: the seed itself was poor. */
export const RIPENESS_SAID = ['passed', 'failed', 'unclear', 'invalid'] as const;
export type RipenessSaid = (typeof RIPENESS_SAID)[number];

/** One home test of a batch. What its kind does not ask for is absent. */
export interface RipenessTest {
  readonly id: string;
  /** Day on which it was read, `YYYY-MM-DD`. */
  readonly date: string;
  readonly how: RipenessWay;
  readonly said: RipenessSaid;
  /** Seeds in the compost or its extract, and those that came up and grew on. */
  readonly sown?: number;
  readonly grown?: number;
  /** The same beside it in water alone. */
  readonly waterSown?: number;
  readonly waterGrown?: number;
  /** Mean length of the roots, mm. */
  readonly rootMm?: number;
  readonly waterRootMm?: number;
  /** Greatest rise over the room in a flask, K. */
  readonly riseCelsius?: number;
}

/** An extract test as both sides of it, the way it is judged; `undefined` where a number is missing. */
export function extractOf({
  sown,
  grown,
  waterSown,
  waterGrown,
  rootMm,
  waterRootMm,
}: Partial<RipenessTest>) {
  if (sown === undefined || grown === undefined || waterSown === undefined || waterGrown === undefined)
    return undefined;
  return {
    extract: { sown, grown },
    water: { sown: waterSown, grown: waterGrown },
    ...(rootMm === undefined || waterRootMm === undefined
      ? {}
      : { rootMm: { extract: rootMm, water: waterRootMm } }),
  };
}

/** Beyond these it was a slip of the finger. */
export const RIPENESS_BOUNDS = { seeds: 500, rootMm: 500, riseCelsius: [-20, 70] } as const;

export function repairRipenessTest(found: unknown): RipenessTest | undefined {
  if (!isObject(found) || text(found.id) === '' || day(found.date) === '') return undefined;
  const how = oneOf(RIPENESS_WAYS, found.how);
  const said = oneOf(RIPENESS_SAID, found.said);
  if (how === undefined || said === undefined) return undefined;
  const seeds = (value: unknown) => number(value, 0, RIPENESS_BOUNDS.seeds);
  const root = (value: unknown) => number(value, 0, RIPENESS_BOUNDS.rootMm);
  return {
    id: text(found.id),
    date: day(found.date),
    how,
    said,
    ...optional('sown', seeds(found.sown)),
    ...optional('grown', seeds(found.grown)),
    ...optional('waterSown', seeds(found.waterSown)),
    ...optional('waterGrown', seeds(found.waterGrown)),
    ...optional('rootMm', root(found.rootMm)),
    ...optional('waterRootMm', root(found.waterRootMm)),
    ...optional('riseCelsius', number(found.riseCelsius, ...RIPENESS_BOUNDS.riseCelsius)),
  };
}
