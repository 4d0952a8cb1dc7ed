import type { MeasureId } from '../../leaf/measures.ts';
import type { LayerId, Whereabouts } from '../workers/lay-layers.ts';

interface LayerWords {
  readonly name: string;
  /** How it is drawn on the photo, for those who do not go by colour. */
  readonly drawn: string;
  /** The measure that is this layer's number. */
  readonly measure: MeasureId;
}

export const LAYER_WORDS: Record<LayerId, LayerWords> = {
  outline: { name: 'Outline of the leaf', drawn: 'one line', measure: 'frame-share' },
  veins: { name: 'Veins', drawn: 'thin pale lines', measure: 'vein-contrast' },
  yellow: { name: 'Pale to yellow', drawn: 'dots', measure: 'chlorotic-fraction' },
  dead: { name: 'Brown, black or straw-dead', drawn: 'crossed lines', measure: 'necrotic-fraction' },
  purple: { name: 'Purple, red or bronze', drawn: 'level strokes', measure: 'purple-fraction' },
  white: { name: 'White or silvery', drawn: 'upright strokes', measure: 'white-fraction' },
  holes: { name: 'Holes', drawn: 'a dashed ring', measure: 'hole-fraction' },
  edge: {
    name: 'Missing from the edge',
    drawn: 'slanting strokes, dashed ring',
    measure: 'edge-loss-fraction',
  },
};

/** Layers that a measure speaks of: picking one picks the other. */
export const LAYERS_OF: { readonly [Id in MeasureId]?: readonly LayerId[] } = {
  'frame-share': ['outline'],
  'vein-contrast': ['veins'],
  'chlorotic-fraction': ['yellow'],
  'necrotic-fraction': ['dead'],
  'spot-count': ['dead'],
  'spot-fraction': ['dead'],
  'purple-fraction': ['purple'],
  'white-fraction': ['white'],
  'lost-fraction': ['holes', 'edge'],
  'hole-fraction': ['holes'],
  'hole-count': ['holes'],
  'edge-loss-fraction': ['edge'],
  'ribs-left': ['holes', 'edge'],
};

/** Where on the photo, seen from its middle; only said of layers that lie together. */
export const WHERE_WORDS: Record<Whereabouts, string> = {
  over: 'all over',
  middle: 'mostly in the middle',
  top: 'mostly in the upper third',
  bottom: 'mostly in the lower third',
  left: 'mostly on the left',
  right: 'mostly on the right',
  'top-left': 'mostly upper left',
  'top-right': 'mostly upper right',
  'bottom-left': 'mostly lower left',
  'bottom-right': 'mostly lower right',
};

const hundredths = (fraction: number): number => Math.round(fraction * 100);

export const OVERLAY_WORDS = {
  layers: 'What is drawn on the photo',
  drawnOver: (names: readonly string[]): string => `Drawn over the photo: ${names.join('; ')}`,
  layersHint: 'A tick shows it; press a line and it is pointed out.',
  showLayer: (name: string): string => `Show: ${name}`,
  noNumber: 'not measured here',
  notFound: (names: readonly string[]): string => `Looked for and not found here: ${names.join('; ')}.`,
  zoomIn: 'Larger',
  zoomOut: 'Smaller',
  zoomWhole: 'Whole photo',
  zoomWholeShort: 'Whole',
  zoomed: (times: number): string => `${times.toFixed(1).replace(/\.0$/, '')} times as large`,
  surface: 'The photo, with a cross to place taps',
  surfaceHelp:
    'Arrow keys move the cross, with Shift in large steps. Enter taps there, Control and Z takes the last tap back, plus and minus change the size, Escape leaves the photo.',
  crossAt: (x: number, y: number, what: string): string =>
    `${what}, ${hundredths(x)} of 100 from the left, ${hundredths(y)} from the top`,
  here: (what: string): string => `Here: ${what}.`,
  offLeaf: 'beside the leaf',
  sound: 'green, nothing marked',
  unknown: 'nothing measured yet',
  tapMode: 'What a tap on the photo does',
  taps: {
    ask: { name: 'Ask', says: 'Tap a place: what was measured there is named and pointed out.' },
    leaf: { name: 'Which leaf', says: 'Tap the leaf that is meant: the outline moves there.' },
    add: { name: 'Add', says: 'Tap what belongs to the leaf and was left out.' },
    remove: { name: 'Leave out', says: 'Tap what does not belong to the leaf.' },
    white: { name: 'Set the white', says: 'Tap something white or grey: a plant label, paper, a stone.' },
  },
  untapLast: 'Take back the last tap',
  untapAll: 'Take back all taps',
  hatching: 'Show the drawing on the photo',
} as const;

export type TapKind = keyof typeof OVERLAY_WORDS.taps;
