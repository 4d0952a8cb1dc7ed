import './asking.css';
import { useEffect, useRef } from 'preact/hooks';

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
  return (
    <div class="asking" role="alertdialog" aria-label={label} ref={box} tabIndex={-1}>
      <p>{asks}</p>
      <button type="button" class="button" onClick={onYes}>
        {yes}
      </button>
      <button type="button" class="button" onClick={onNo}>
        {no}
      </button>
    </div>
  );
}
