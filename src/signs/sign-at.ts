import type { LeafReading } from '../leaf/types.ts';
import type { AskableId } from './vocabulary.ts';

/** The sign of a mark that a photo in this role speaks of; a normal leaf is there for comparison only and speaks of none. */
export const signAt = (mark: string, role: Exclude<LeafReading['role'], 'normal'>): AskableId =>
  `${mark}@${role === 'whole' ? 'some' : role}` as AskableId;
