/** A library that travels with the app. */
export interface Licence {
  readonly name: string;
  readonly version: string;
  /** SPDX identifier, as the library states it. */
  readonly licence: string;
  /** Whole text, with its copyright notice. */
  readonly text: string;
}
