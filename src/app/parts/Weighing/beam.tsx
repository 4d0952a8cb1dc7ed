import { useRef, useState } from 'preact/hooks';
import { capitalise } from '../../words/causes.ts';
import { describeReason, type Reported } from '../../words/reasons.ts';
import { WEIGHING_WORDS as WORDS } from '../../words/weighing.ts';
import { describeWeight } from '../../words/weights.ts';
import { Gardens } from './gardens.tsx';
import type { Block, WeighedLine } from './lay-out-weighing.ts';

interface BeamProps {
  readonly line: WeighedLine;
  readonly name: string;
  readonly reported: Reported;
  /** Ids that the last answer was about: their blocks are marked as new. */
  readonly newest: readonly string[];
}

/** A beam dips by at most this much, however heavy one side is. */
const MOST_TILT_DEGREES = 1.9;

interface PlacedBlock extends Block {
  readonly side: 'for' | 'against';
  /** Decibans from the fulcrum to the near end of the block. */
  readonly from: number;
}

/** The beam of one cause: blocks right of the fulcrum speak for it, left of it against. Arrow keys go along it. */
export function Beam({ line, name, reported, newest }: BeamProps) {
  const [active, setActive] = useState<number | undefined>(undefined);
  const group = useRef<HTMLDivElement>(null);
  const blocks = placeBlocks(line);
  const shown = active === undefined ? heaviest(blocks) : blocks[active];
  const move = (event: KeyboardEvent): void => {
    const step = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
    if (step === 0 || blocks.length === 0) return;
    event.preventDefault();
    const next = ((active ?? 0) + step + blocks.length) % blocks.length;
    setActive(next);
    group.current?.querySelectorAll('button')[next]?.focus();
  };
  const tilt = MOST_TILT_DEGREES * Math.tanh(line.net / 12);
  return (
    <>
      <div
        class="beam"
        role="toolbar"
        aria-label={sayBeam(name, blocks)}
        tabIndex={-1}
        ref={group}
        onKeyDown={move}
      >
        <div class="beam-arm" style={{ transform: `rotate(${tilt.toFixed(2)}deg)` }}>
          {blocks.map((block, index) => (
            <BlockButton
              key={`${block.side}${block.reasons[0]?.sign}`}
              block={block}
              reported={reported}
              isNew={block.reasons.some(({ sign }) =>
                newest.some((id) => sign === id || sign.startsWith(`${id}=`)),
              )}
              reachable={index === (active ?? 0)}
              onShow={() => setActive(index)}
            />
          ))}
        </div>
        <svg class="beam-fulcrum" viewBox="0 0 20 12" aria-hidden="true">
          <path d="M10 1 18 11H2Z" />
        </svg>
      </div>
      <div class="cause-under">
        <Gardens probability={line.cause.probability} low={line.cause.low} high={line.cause.high} />
        <p class="beam-says small">{shown ? sayBlock(shown, reported) : WORDS.noReasons}</p>
      </div>
    </>
  );
}

function placeBlocks(line: WeighedLine): PlacedBlock[] {
  const place = (blocks: readonly Block[], side: PlacedBlock['side']): PlacedBlock[] => {
    let from = 0;
    return blocks.map((block) => {
      const placed = { ...block, side, from };
      from += block.decibans;
      return placed;
    });
  };
  // In the order of the page, left to right, so that the arrow keys go where the eye does.
  return [...place(line.against, 'against').reverse(), ...place(line.for, 'for')];
}

const heaviest = (blocks: readonly PlacedBlock[]): PlacedBlock | undefined =>
  [...blocks].sort((a, b) => b.decibans - a.decibans)[0];

interface BlockButtonProps {
  readonly block: PlacedBlock;
  readonly reported: Reported;
  readonly isNew: boolean;
  readonly reachable: boolean;
  readonly onShow: () => void;
}

function BlockButton({ block, reported, isNew, reachable, onShow }: BlockButtonProps) {
  const [reason] = block.reasons;
  const kind = reason ? describeReason(reason, reported).kind : 'circumstance';
  return (
    <button
      type="button"
      class={`block ${block.side} ${kind}${isNew ? ' is-new' : ''}`}
      style={{ '--from': block.from, '--weight': block.decibans }}
      tabIndex={reachable ? 0 : -1}
      aria-label={sayBlock(block, reported)}
      onClick={onShow}
      onFocus={onShow}
      onPointerEnter={onShow}
    />
  );
}

function sayBlock(block: PlacedBlock, reported: Reported): string {
  const signed = block.side === 'for' ? block.decibans : -block.decibans;
  const weight = describeWeight(signed);
  const [reason] = block.reasons;
  if (!reason || block.reasons.length > 1)
    return `${capitalise(WORDS.smallOnes(block.reasons.length))}: ${weight}`;
  const { says } = describeReason(reason, reported);
  return `${capitalise(says)}: ${weight}`;
}

function sayBeam(name: string, blocks: readonly PlacedBlock[]): string {
  const count = (side: PlacedBlock['side']): number => blocks.filter((block) => block.side === side).length;
  return `Reasons for and against ${name}: ${count('for')} for, ${count('against')} against`;
}
