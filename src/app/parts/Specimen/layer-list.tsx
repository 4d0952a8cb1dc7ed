import { LAYER_WORDS, WHERE_WORDS, OVERLAY_WORDS as WORDS } from '../../words/layers.ts';
import type { MeasureInWords } from '../../words/measures.ts';
import { LAYERS, type LayerId, type LayerMap } from '../../workers/lay-layers.ts';
import { Swatch } from './swatch.tsx';

interface LayerListProps {
  readonly map: LayerMap;
  readonly measures: readonly MeasureInWords[];
  readonly hidden: ReadonlySet<LayerId>;
  readonly onShow: (layer: LayerId, shown: boolean) => void;
  readonly picked: readonly LayerId[];
  readonly onPick: (layers: readonly LayerId[]) => void;
}

/** Layers that are on this photo; the outline always is. */
export const layersOn = (map: LayerMap): readonly LayerId[] =>
  LAYERS.filter((id) => id === 'outline' || map.found[id] !== undefined);

/**
 * The legend of the photo: every layer with its pattern in a picture and in words, where it lies, its number with its
 * error, a switch, and a press that points it out. Read aloud it says all that the drawing shows.
 */
export function LayerList({ map, measures, hidden, onShow, picked, onPick }: LayerListProps) {
  const there = layersOn(map);
  const absent = LAYERS.filter((id) => !there.includes(id));
  return (
    <section class="layers" aria-label={WORDS.layers}>
      <p class="small soft">{WORDS.layersHint}</p>
      <ul>
        {there.map((id) => {
          const { name, drawn, measure } = LAYER_WORDS[id];
          const where = map.found[id];
          const isPicked = picked.includes(id);
          return (
            <li key={id} class={isPicked ? 'layer picked' : 'layer'}>
              <label class="layer-switch">
                <input
                  type="checkbox"
                  aria-label={WORDS.showLayer(name)}
                  checked={!hidden.has(id)}
                  onChange={(event) => onShow(id, event.currentTarget.checked)}
                />
              </label>
              <button
                type="button"
                class="layer-line"
                aria-pressed={isPicked}
                onClick={() => onPick(isPicked ? [] : [id])}
              >
                <Swatch of={id} />
                <span>
                  <span>{name}</span>
                  <span class="layer-number figures">
                    {measures.find((said) => said.id === measure)?.says ?? WORDS.noNumber}
                  </span>
                  <span class="small soft">
                    {drawn}
                    {where && `, ${WHERE_WORDS[where]}`}
                  </span>
                </span>
              </button>
            </li>
          );
        })}
      </ul>
      {absent.length > 0 && (
        <p class="small soft">
          {WORDS.notFound(absent.map((id) => LAYER_WORDS[id].name.toLocaleLowerCase('en-GB')))}
        </p>
      )}
    </section>
  );
}
