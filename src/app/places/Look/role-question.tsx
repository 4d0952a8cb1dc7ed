import './role-question.css';
import { useEffect, useRef } from 'preact/hooks';
import { Drawn } from '../../parts/Drawn/drawn.tsx';
import { landOn } from '../../parts/OnUse/keep-focus.ts';
import { change } from '../../state/change-look.ts';
import type { DraftPhoto } from '../../state/draft.ts';
import { LOOK_WORDS as WORDS } from '../../words/look.ts';
import { PHOTO_ROLES, ROLE_WORDS } from '../../words/roles.ts';

interface RoleQuestionProps {
  readonly photo: DraftPhoto;
  readonly onSaid: () => void;
}

/** Old or young leaf tells half of the shortages apart, so it is asked, never guessed. */
export function RoleQuestion({ photo, onSaid }: RoleQuestionProps) {
  const asks = useRef<HTMLLegendElement>(null);
  // The photo has come between the button that gave it and what follows: whoever gave it is put at the question.
  useEffect(() => {
    const { activeElement } = document;
    if (activeElement === document.body || activeElement?.closest('.photo-desk')) landOn(asks.current);
  }, []);
  return (
    <fieldset class="role-question stack-close">
      <legend ref={asks}>{WORDS.whatShows}</legend>
      <p class="small soft">{WORDS.whatShowsWhy}</p>
      <div class="role-answers">
        {PHOTO_ROLES.map((role) => (
          <button
            key={role}
            type="button"
            class="role-answer"
            onClick={() => {
              change({ kind: 'set-role', photoId: photo.id, role });
              onSaid();
            }}
          >
            <Drawn of={role} />
            <span>
              {ROLE_WORDS[role].name} <span class="small soft">{ROLE_WORDS[role].says}</span>
            </span>
          </button>
        ))}
      </div>
    </fieldset>
  );
}
