import './viewfinder.css';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { FrameHint } from '../../../leaf/judge-frame.ts';
import { type CameraTrouble, VIEWFINDER_WORDS as WORDS } from '../../words/viewfinder.ts';
import { FilePicker } from '../FilePicker/file-picker.tsx';
import { Mark } from '../Mark/mark.tsx';
import { judgeFrames } from './judge-frames.ts';
import { closeCamera, hasTorch, openCamera, shine, takePhoto, troubleOf } from './open-camera.ts';
import { HELP_ID, ViewfinderHelp } from './viewfinder-help.tsx';

interface ViewfinderProps {
  readonly onTaken: (files: readonly File[]) => void;
  readonly onClose: () => void;
}

/** The camera's picture with a sentence on what to do before the shutter; other ways to a photo stand beside it. */
export function Viewfinder({ onTaken, onClose }: ViewfinderProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const video = useRef<HTMLVideoElement>(null);
  const stream = useRef<MediaStream | undefined>(undefined);
  const [state, setState] = useState<'starting' | 'runs' | 'taking' | CameraTrouble>('starting');
  const [hint, setHint] = useState<FrameHint | undefined>(undefined);
  const [failed, setFailed] = useState(false);
  const [torch, setTorch] = useState<'none' | 'off' | 'on'>('none');

  useEffect(() => {
    dialog.current?.showModal();
    let left = false;
    let stopJudging: (() => void) | undefined;
    void (async () => {
      try {
        const opened = await openCamera();
        // Closed while the browser was still asking: nobody is watched by a camera they cannot see.
        if (left) return closeCamera(opened);
        stream.current = opened;
        opened.getVideoTracks()[0]?.addEventListener('ended', () => setState('lost'));
        const film = video.current;
        if (!film) return;
        film.srcObject = opened;
        await film.play();
        if (left) return;
        setState('runs');
        if (hasTorch(opened)) setTorch('off');
        stopJudging = judgeFrames(film, setHint);
      } catch (cause) {
        if (!left) setState(troubleOf(cause));
      }
    })();
    return () => {
      left = true;
      stopJudging?.();
      closeCamera(stream.current);
    };
  }, []);

  const deliver = (files: readonly File[]): void => {
    if (files.length === 0) return;
    // Closing gives the focus back to where it came from.
    dialog.current?.close();
    onTaken(files);
  };

  const take = async (): Promise<void> => {
    const [film, opened] = [video.current, stream.current];
    if (!film || !opened || state !== 'runs') return;
    setFailed(false);
    setState('taking');
    try {
      deliver([await takePhoto(film, opened)]);
    } catch {
      setFailed(true);
      setState('runs');
    }
  };

  const turnTorch = async (): Promise<void> => {
    const on = torch === 'off';
    if (stream.current) setTorch((await shine(stream.current, on)) ? (on ? 'on' : 'off') : 'none');
  };

  const isGood = hint === 'ready' || hint === 'lay-label';
  const runs = state === 'runs' || state === 'taking';
  const trouble = runs || state === 'starting' ? undefined : WORDS.trouble[state];
  const says = failed ? WORDS.notTaken : (trouble ?? (hint ? WORDS.hints[hint] : WORDS.starting));
  return (
    <dialog class="viewfinder" ref={dialog} aria-labelledby="viewfinder-title" onClose={onClose}>
      <h2 id="viewfinder-title" class="unseen">
        {WORDS.title}
      </h2>
      <div class="viewfinder-picture">
        {!trouble && <video ref={video} muted playsInline aria-label={WORDS.film} />}
        {runs && <span class={`viewfinder-frame ${isGood ? 'ready' : ''}`} aria-hidden="true" />}
      </div>
      <p class={`viewfinder-hint ${isGood && !failed ? 'ready' : ''}`} role="status">
        {says}
      </p>
      <div class="viewfinder-first">
        {!trouble && (
          <button
            type="button"
            class="button next"
            aria-disabled={state !== 'runs'}
            onClick={() => void take()}
          >
            {state === 'taking' ? WORDS.taking : WORDS.take}
          </button>
        )}
        <button type="button" class="button" onClick={() => dialog.current?.close()}>
          {WORDS.close}
        </button>
        <button
          type="button"
          class="viewfinder-mark"
          aria-label={WORDS.help.title}
          title={WORDS.help.title}
          aria-haspopup="dialog"
          popovertarget={HELP_ID}
        >
          <Mark of="help" />
        </button>
      </div>
      <div class="viewfinder-ways">
        {runs && torch !== 'none' && (
          <button type="button" class="button" aria-pressed={torch === 'on'} onClick={() => void turnTorch()}>
            {torch === 'on' ? WORDS.torchOff : WORDS.torchOn}
          </button>
        )}
        <FilePicker class="button" label={WORDS.ownCamera} onAdd={deliver} camera>
          {WORDS.ownCamera}
        </FilePicker>
        <FilePicker class="button" label={WORDS.choose} onAdd={deliver}>
          {WORDS.choose}
        </FilePicker>
      </div>
      <ViewfinderHelp />
    </dialog>
  );
}
