import { useEffect, useState } from 'preact/hooks';
import { MARK_SCALES } from '../../../classifier/calibration.ts';
import { fitsNetwork } from '../../../classifier/own-head/reports-with-own-head.ts';
import { bytesOfNetwork, switchNetworkOff, switchNetworkOn } from '../../state/kept-network.ts';
import { type NetworkState, network } from '../../state/network.ts';
import { ownHead } from '../../state/own-head.ts';
import { hashOf } from '../../state/route.ts';
import { describeBytes } from '../../words/bytes.ts';
import { NETWORK_WORDS as WORDS } from '../../words/network.ts';
import { SHELL_WORDS } from '../../words/shell.ts';
import { describeSign } from '../../words/signs.ts';
import { TAUGHT_WORDS } from '../../words/taught.ts';

const MARKS = MARK_SCALES.filter(({ on }) => on).map(({ mark }) => describeSign(mark).what);

/** What it has learnt from this garden's leaves, as long as this is the network that learnt it. */
function marksLearnt(): string[] {
  const own = ownHead.value;
  const used = own && fitsNetwork(own) ? own.marks.filter(({ end }) => end === 'used') : [];
  return used.map(({ mark }) => describeSign(mark).what);
}

/** The one switch of the network of signs: what it adds, what it weighs, how far it is fetched, what went wrong. */
export function NetworkPart() {
  const [bytes, setBytes] = useState<number | undefined>(undefined);
  useEffect(() => void bytesOfNetwork().then(setBytes), []);
  const now = network.value;
  const learnt = marksLearnt();
  const size = bytes === undefined ? undefined : describeBytes(bytes);
  return (
    <section class="stack-close" aria-labelledby="network">
      <h2 id="network">{WORDS.title}</h2>
      <p>{WORDS.what}</p>
      {MARKS.length > 0 && <p>{WORDS.reports(MARKS)}</p>}
      {learnt.length > 0 && <p>{WORDS.learnt(learnt)}</p>}
      {MARKS.length + learnt.length === 0 && <p>{WORDS.reportsNothing}</p>}
      <label class="switch">
        <input
          type="checkbox"
          role="switch"
          aria-checked={now.at !== 'off'}
          checked={now.at !== 'off'}
          aria-describedby="network-state"
          onChange={(event) => void (event.currentTarget.checked ? switchNetworkOn() : switchNetworkOff())}
        />
        {WORDS.turnOn}
      </label>
      <div id="network-state" role="status">
        <p class="small soft">{sayState(now, size)}</p>
      </div>
      {now.at === 'fetching' && <Progress {...now} />}
      {now.at === 'fault' && (
        <button type="button" class="button" onClick={() => void switchNetworkOn()}>
          {WORDS.tryAgain}
        </button>
      )}
      {now.at !== 'off' && <p class="small soft">{WORDS.off}</p>}
      <p>
        <a class="link-line" href={hashOf({ place: 'book', page: 'leaves' })}>
          {TAUGHT_WORDS.leaves}
        </a>
      </p>
    </section>
  );
}

function sayState(now: NetworkState, size: string | undefined): string {
  switch (now.at) {
    case 'off':
      return size === undefined ? '' : WORDS.size(size);
    case 'opening':
      return WORDS.opening;
    case 'fetching':
      return WORDS.fetching;
    case 'kept':
      return WORDS.kept(size ?? '');
    case 'fault':
      return SHELL_WORDS.network[now.fault];
  }
}

function Progress({ done, total }: { readonly done: number; readonly total: number }) {
  const says = WORDS.fetched(describeBytes(done), describeBytes(total));
  return (
    <p class="network-progress">
      <progress aria-label={WORDS.fetching} aria-valuetext={says} value={done} max={total} />
      <span class="small figures">{says}</span>
    </p>
  );
}
