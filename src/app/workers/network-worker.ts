import { setWasmPaths } from '@tensorflow/tfjs-backend-wasm';
import wasm from '@tensorflow/tfjs-backend-wasm/dist/tfjs-backend-wasm-simd.wasm?url';
import { findingsFromNetwork } from '../../classifier/findings-from-network.ts';
import { NETWORK_ID } from '../../classifier/network-file.ts';
import { learnOwnHead } from '../../classifier/own-head/learn-own-head.ts';
import { fitLogistic } from '../../classifier/session/fit-logistic.ts';
import { openNetwork, type SignsNetwork } from '../../classifier/session/open-network.ts';
import { type NetworkAnswer, NetworkError } from '../../classifier/types.ts';
import type { SeenByNetwork } from '../../garden/seen-by-network.ts';
import type { PhotoRole } from '../../photo/types.ts';
import type { NetworkReply, NetworkRequest } from './protocol.ts';
import { type Served, type ServedPort, serve } from './serve.ts';

// One file for all: it is opened on one thread, and only where the processor adds several numbers at once (`canRunNetwork`).
setWasmPaths({
  'tfjs-backend-wasm.wasm': wasm,
  'tfjs-backend-wasm-simd.wasm': wasm,
  'tfjs-backend-wasm-threaded-simd.wasm': wasm,
});

/** Through the service worker, which answers with what was kept (`kept-network.ts`). */
async function readModel(): Promise<Uint8Array | undefined> {
  const response = await fetch(new URL('../../../models/signs.onnx', import.meta.url)).catch(() => undefined);
  return response?.ok ? new Uint8Array(await response.arrayBuffer()) : undefined;
}

let opened: Promise<SignsNetwork> | undefined;

async function answer(
  request: NetworkRequest,
  tell: (news: NetworkReply) => void,
): Promise<Served<NetworkReply>> {
  if (request.kind === 'learn') {
    const marks = await learnOwnHead(request.examples, fitLogistic, (share) =>
      tell({ ok: true, kind: 'learning', share }),
    );
    return { reply: { ok: true, kind: 'learnt', marks } };
  }
  opened ??= readModel().then(openNetwork);
  const network = await opened;
  if (request.kind === 'open') return { reply: { ok: true, kind: 'open' } };
  const seen = recordOf(await network.look(request.crop), request.role);
  return { reply: { ok: true, kind: 'look', seen } };
}

const DIGITS = 4;
const rounded = (value: number): number => Number(value.toPrecision(DIGITS));

function recordOf(said: NetworkAnswer, role: PhotoRole): SeenByNetwork {
  return {
    network: NETWORK_ID,
    reports: findingsFromNetwork(said, role).map(({ sign, ifPresent, ifAbsent }) => ({
      sign,
      ratio: rounded(ifPresent / ifAbsent),
    })),
    logits: said.logits.map(rounded),
    features: said.features.map(rounded),
    strangeness: rounded(said.strangeness),
  };
}

serve<NetworkRequest, NetworkReply>(self as unknown as ServedPort, answer, (cause) => {
  if (cause instanceof NetworkError) return { ok: false, code: cause.code };
  console.error('the network failed', cause);
  return { ok: false, code: 'network-cannot-run' };
});
