import { SETTINGS, type Setting, type SettingId } from '../../../signs/settings.ts';
import {
  BROADER_MARKS,
  CREATURE_SIGNS,
  MARKS,
  PLANT_SIGNS,
  SPREAD_SIGNS,
  TEST_SIGNS,
} from '../../../signs/vocabulary.ts';
import { Segments } from '../../parts/Choice/segments.tsx';
import { Drawn } from '../../parts/Drawn/drawn.tsx';
import { TermsOf } from '../../parts/Terms/terms-of.tsx';
import { Unfold } from '../../parts/Unfold/unfold.tsx';
import type { SignAnswer } from '../../state/change-draft.ts';
import { change } from '../../state/change-look.ts';
import { draft } from '../../state/look-in-hand.ts';
import { answersInHand } from '../../state/weigh-look.ts';
import { capitalise } from '../../words/causes.ts';
import { shortAnswers } from '../../words/checks.ts';
import { LOOK_WORDS as WORDS } from '../../words/look.ts';
import { BROADER_WORDS, PLACE_WORDS, type Place } from '../../words/signs.ts';
import { SettingField } from './setting-field.tsx';

type SignGroupId = Exclude<keyof typeof WORDS.groups, 'setting'>;

interface Asked {
  readonly id: string;
  readonly says: string;
}

const GROUPS: readonly {
  readonly id: SignGroupId;
  readonly signs: readonly Asked[];
  readonly places: boolean;
}[] = [
  { id: 'mark', signs: MARKS, places: true },
  {
    id: 'cannotSayExactly',
    signs: Object.keys(BROADER_MARKS).map((id) => ({
      id,
      says: BROADER_WORDS[id as keyof typeof BROADER_WORDS],
    })),
    places: true,
  },
  { id: 'plant', signs: PLANT_SIGNS, places: false },
  { id: 'creature', signs: CREATURE_SIGNS, places: false },
  { id: 'spread', signs: SPREAD_SIGNS, places: false },
  { id: 'test', signs: TEST_SIGNS, places: false },
];

const PLACES: readonly Place[] = ['old', 'new', 'some'];

/** Every sign and circumstance, for those who would rather go down a list. */
export function AllQuestions() {
  const settings = Object.keys(SETTINGS) as SettingId[];
  const answers = answersInHand.value;
  return (
    <div class="all-questions">
      <p class="small soft">{WORDS.listLead}</p>
      {GROUPS.map(({ id, signs, places }) => (
        <Group key={id} title={WORDS.groups[id]} said={countSaid(signs)}>
          {() =>
            signs.map((sign) =>
              places ? (
                <MarkRow key={sign.id} mark={sign} />
              ) : (
                <div class="list-row" key={sign.id}>
                  <Drawn of={sign.id} />
                  <SignChoice id={sign.id} legend={capitalise(sign.says)} />
                </div>
              ),
            )
          }
        </Group>
      ))}
      <Group
        title={WORDS.groups.setting}
        said={settings.filter((id) => answers.setting[id] !== undefined).length}
      >
        {() => settings.map((id) => <SettingField key={id} id={id} setting={SETTINGS[id] as Setting} />)}
      </Group>
    </div>
  );
}

function countSaid(signs: readonly Asked[]): number {
  const ids = new Set(signs.map(({ id }) => id));
  return Object.keys(draft.value.answers.signs).filter((id) => ids.has(id.split('@')[0] ?? id)).length;
}

interface GroupProps {
  readonly title: string;
  readonly said: number;
  readonly children: () => preact.ComponentChildren;
}

function Group({ title, said, children }: GroupProps) {
  return (
    <Unfold
      summary={
        <>
          <span>{title}</span> <span class="said-count small soft figures">{WORDS.answered(said)}</span>
        </>
      }
    >
      {() => <div class="list-group">{children()}</div>}
    </Unfold>
  );
}

const saidOf = (id: string): 'seen' | 'absent' | undefined =>
  (draft.value.answers.signs as Partial<Record<string, 'seen' | 'absent'>>)[id];

/** A mark is asked at the oldest leaves, the youngest, or on some when that is all that is known. */
function MarkRow({ mark }: { readonly mark: Asked }) {
  const said = PLACES.flatMap((place) => {
    const answer = saidOf(`${mark.id}@${place}`);
    return answer ? [`${PLACE_WORDS[place].short}: ${shortAnswers(mark.id)[answer]}`] : [];
  });
  return (
    <Unfold
      class="mark-row"
      summary={
        <>
          <Drawn of={mark.id} />
          <span>
            {capitalise(mark.says)}
            {said.length > 0 && <span class="mark-said small">{said.join('; ')}</span>}
          </span>
        </>
      }
    >
      {() => [
        <TermsOf key="terms" says={[mark.says]} />,
        ...PLACES.map((place) => (
          <SignChoice key={place} id={`${mark.id}@${place}`} legend={capitalise(PLACE_WORDS[place].short)} />
        )),
      ]}
    </Unfold>
  );
}

function SignChoice({ id, legend }: { readonly id: string; readonly legend: string }) {
  return (
    <Segments<SignAnswer>
      legend={legend}
      name={`sign-${id}`}
      options={[
        { id: 'seen', says: shortAnswers(id).seen },
        { id: 'absent', says: shortAnswers(id).absent },
        { id: 'not-looked', says: WORDS.notLooked, open: true },
      ]}
      value={saidOf(id) ?? 'not-looked'}
      onChange={(answer) => change({ kind: 'answer-signs', signs: { [id]: answer } })}
    />
  );
}
