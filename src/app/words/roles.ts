import type { PhotoRole } from '../../photo/types.ts';

export const PHOTO_ROLES: readonly PhotoRole[] = ['old', 'new', 'whole', 'normal'];

export const ROLE_WORDS: Record<PhotoRole, { readonly name: string; readonly says: string }> = {
  old: { name: 'Old leaf', says: 'low on the plant' },
  new: { name: 'Young leaf', says: 'from the growing tip' },
  whole: { name: 'Whole plant', says: 'from the side' },
  normal: { name: 'Normal leaf', says: 'a sound one of the same variety, to compare' },
};

/** Kept with a photo when nobody said what it shows. */
export const ROLE_UNSAID = 'unsaid';

export const roleName = (role: string): string =>
  role === ROLE_UNSAID
    ? 'Not said what it shows'
    : ((ROLE_WORDS as Partial<Record<string, { name: string }>>)[role]?.name ?? role);
