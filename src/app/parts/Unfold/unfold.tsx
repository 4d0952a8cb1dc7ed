import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';

interface UnfoldProps {
  readonly summary: ComponentChildren;
  readonly class?: string;
  /** Set small, as a way to more of the same. */
  readonly small?: boolean;
  readonly children: () => ComponentChildren;
}

/** What is folded away is built when it is first opened, and then stays: a hundred lines that nobody sees would hold up every answer. */
export function Unfold({ summary, class: name, small = false, children }: UnfoldProps) {
  const [opened, setOpened] = useState(false);
  return (
    <details class={name} onToggle={(event) => event.currentTarget.open && setOpened(true)}>
      <summary class={small ? 'small' : undefined}>{summary}</summary>
      {opened && children()}
    </details>
  );
}
