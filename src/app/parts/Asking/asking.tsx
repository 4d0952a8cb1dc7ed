import './asking.css';
import { useEffect, useRef } from 'preact/hooks';
import { landOn } from '../OnUse/keep-focus.ts';

interface AskingProps {
  readonly label: string;
  readonly asks: string;
  readonly yes: string;
  readonly no: string;
  readonly onYes: () => void;
  readonly onNo: () => void;
}

/** A question before something is done that hurts. It comes into view by itself, clear of the bars at the lower edge. */
export function Asking({ label, asks, yes, no, onYes, onNo }: AskingProps) {
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    box.current?.scrollIntoView({ block: 'center' });
    box.current?.focus({ preventScroll: true });
  }, []);
  const home = useRef<Element | null>(null);
  useEffect(() => {
    home.current = box.current?.parentElement ?? null;
  }, []);
  /** Where it was asked from, the button of that name stands again. */
  const leave = (): void => {
    onNo();
    requestAnimationFrame(() => {
      const buttons = [...(home.current?.querySelectorAll('button') ?? [])];
      landOn(buttons.find(({ textContent }) => textContent === label));
    });
  };
  return (
    <div
      class="asking"
      role="alertdialog"
      aria-label={label}
      ref={box}
      tabIndex={-1}
      onKeyDown={(event) => event.key === 'Escape' && leave()}
    >
      <p>{asks}</p>
      <button type="button" class="button" onClick={onYes}>
        {yes}
      </button>
      <button type="button" class="button" onClick={leave}>
        {no}
      </button>
    </div>
  );
}
