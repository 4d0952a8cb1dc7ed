import { judgeFrame } from '../../leaf/judge-frame.ts';
import type { FrameReply, FrameRequest } from './protocol.ts';
import { type ServedPort, serve } from './serve.ts';

serve<FrameRequest, FrameReply>(
  self as unknown as ServedPort,
  ({ frame }) => ({ reply: { ok: true, judgement: judgeFrame(frame) } }),
  () => ({ ok: false }),
);
