import type { PhotoRole } from '../../photo/types.ts';

export const PHOTO_ROLES: readonly PhotoRole[] = ['old', 'new', 'whole', 'normal'];

export const ROLE_WORDS: Record<PhotoRole, { readonly name: string; readonly says: string }> = {
  old: { name: 'Old leaf', says: 'low on the plant' },
  new: { name: 'Young leaf', says: 'from the growing tip' },
  whole: { name: 'Whole plant', says: 'from the side' },
  normal: { name: 'Normal leaf', says: 'a sound one of the same variety, to compare' },
};
