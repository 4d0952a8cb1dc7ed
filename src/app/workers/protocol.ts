/**
 * Every message that crosses a worker boundary, but those of the demo (`demo-worker.ts`). Errors cross as data with a
 * code: a thrown error would lose its code and class on the way (structured clone keeps neither).
 */
import type { LeafCrop } from '../../classifier/cut-crop.ts';
import type { LeafExample } from '../../classifier/own-head/leaf-example.ts';
import type { NetworkTrouble } from '../../classifier/types.ts';
import type { OwnMark } from '../../garden/own-head-record.ts';
import type { SeenByNetwork } from '../../garden/seen-by-network.ts';
import type { FrameJudgement } from '../../leaf/judge-frame.ts';
import type { LeafReading, Taps } from '../../leaf/types.ts';
import type { PhotoRole, PhotoTrouble, Pixels } from '../../photo/types.ts';
import type { GardenLessons } from '../../ranker/learn-lessons.ts';
import type { CauseId } from '../../signs/vocabulary.ts';
import type { LearnInput, TriageInput, TriageResult } from '../../triage.ts';
import type { LayerMap } from './lay-layers.ts';

/** To the photo worker: read a leaf off a photo. The file stays whole on both sides (a Blob is a reference). */
export interface ReadPhoto {
  readonly kind: 'read-photo';
  readonly photoId: string;
  readonly picture: Blob;
  readonly role: PhotoRole;
  readonly taps: Taps;
  readonly file?: string;
  readonly wantThumbnail: boolean;
  /** The leaf as the network of signs wants it. */
  readonly wantCrop: boolean;
}
export type PhotoRequest = ReadPhoto;
export type PhotoReply =
  | {
      readonly ok: true;
      readonly reading: LeafReading;
      readonly layers?: LayerMap;
      readonly thumbnail?: Blob;
      /** Absent where it was not wanted, or where nothing is concluded from this photo's colours. */
      readonly crop?: LeafCrop;
    }
  | { readonly ok: false; readonly code: PhotoTrouble | 'failed' };

/** To the network's worker: it opens the network when it is asked first. */
export type NetworkRequest =
  | { readonly kind: 'open' }
  | { readonly kind: 'look'; readonly crop: LeafCrop; readonly role: PhotoRole }
  /** Needs no network, only what runs it; told in shares until it is done. */
  | { readonly kind: 'learn'; readonly examples: readonly LeafExample[] };
export type NetworkReply =
  | { readonly ok: true; readonly kind: 'open' }
  | { readonly ok: true; readonly kind: 'look'; readonly seen: SeenByNetwork }
  | { readonly ok: true; readonly kind: 'learning'; readonly share: number }
  | { readonly ok: true; readonly kind: 'learnt'; readonly marks: readonly OwnMark[] }
  | { readonly ok: false; readonly code: NetworkTrouble };

/** To the frame worker: judge one small frame of the film while the camera is held. */
export interface FrameRequest {
  readonly kind: 'judge-frame';
  readonly frame: Pixels;
}
export type FrameReply = { readonly ok: true; readonly judgement: FrameJudgement } | { readonly ok: false };

/** To the ranking worker. */
export type RankingRequest =
  | { readonly kind: 'rank'; readonly input: TriageInput }
  | { readonly kind: 'learn'; readonly input: LearnInput }
  | { readonly kind: 'explain'; readonly cause: CauseId };
export type RankingReply =
  | { readonly ok: true; readonly kind: 'rank'; readonly result: TriageResult }
  | { readonly ok: true; readonly kind: 'learn'; readonly lessons: GardenLessons }
  | { readonly ok: true; readonly kind: 'explain'; readonly page: CausePage }
  | { readonly ok: false; readonly code: 'failed' | 'unknown-cause' };

/** What the knowledge base says of a cause, without its numbers. */
export interface CausePage {
  readonly cause: CauseId;
  readonly what: string;
  readonly mistakenFor: readonly { readonly cause: CauseId; readonly tellsApart: string }[];
  readonly looksLike: string;
}

/** Around each message: the number ties the reply to its request. */
export interface Sent<Request> {
  readonly number: number;
  readonly request: Request;
}
export interface Answered<Reply> {
  readonly number: number;
  readonly reply: Reply;
}
