import { KNOWLEDGE } from '../../causes/knowledge/index.ts';
import { learn, triage } from '../../triage.ts';
import type { RankingReply, RankingRequest } from './protocol.ts';
import { type Served, type ServedPort, serve } from './serve.ts';

function answer(request: RankingRequest): Served<RankingReply> {
  if (request.kind === 'rank') return { reply: { ok: true, kind: 'rank', result: triage(request.input) } };
  if (request.kind === 'learn') return { reply: { ok: true, kind: 'learn', lessons: learn(request.input) } };
  const cause = KNOWLEDGE.find(({ id }) => id === request.cause);
  if (!cause) return { reply: { ok: false, code: 'unknown-cause' } };
  const page = {
    cause: cause.id,
    what: cause.what,
    mistakenFor: cause.mistakenFor.map(({ cause: other, tellsApart }) => ({ cause: other, tellsApart })),
    looksLike: cause.recovery.looksLike,
  };
  return { reply: { ok: true, kind: 'explain', page } };
}

serve<RankingRequest, RankingReply>(self as unknown as ServedPort, answer, (cause) => {
  console.error('ranking failed', cause);
  return { ok: false, code: 'failed' };
});
