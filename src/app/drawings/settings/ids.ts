/** Which drawings the settings ask for: one an option, one a band, and one for a question of yes or no. */
import type { SETTINGS, SettingId } from '../../../signs/settings.ts';
import type { Parts } from '../strokes.ts';

type AnswerOf<S> = S extends { readonly options: readonly { readonly id: infer Id extends string }[] }
  ? Id
  : S extends { readonly bands: readonly { readonly id: infer Id extends string }[] }
    ? Id
    : never;
export type SettingDrawingId = {
  [Id in SettingId]: (typeof SETTINGS)[Id] extends { readonly kind: 'yes-no' }
    ? `setting-${Id}`
    : `setting-${Id}-${AnswerOf<(typeof SETTINGS)[Id]>}`;
}[SettingId];

/** The drawings of one subject. */
export type SettingDrawings = Readonly<Partial<Record<SettingDrawingId, () => Parts>>>;
