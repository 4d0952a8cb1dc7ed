import licences from 'virtual:licences';
import { LICENCE_WORDS as WORDS } from '../../words/licences.ts';

/** What the app is made with, and the photographs that its eye was trained on, with their licences. */
export function LicencesPart() {
  return (
    <section class="stack-close">
      <h2>{WORDS.title}</h2>
      <p>{WORDS.libraries}</p>
      <ul>
        {licences.map(({ name, version, licence, text }) => (
          <li key={name}>
            <details>
              <summary>{WORDS.library(name, version, licence)}</summary>
              <pre class="licence-text small">{text}</pre>
            </details>
          </li>
        ))}
      </ul>
      <p>{WORDS.photographs}</p>
      <ul>
        {WORDS.sets.map((set) => (
          <li key={set}>{set}</li>
        ))}
      </ul>
      <p class="small soft">{WORDS.noneShipped}</p>
    </section>
  );
}
