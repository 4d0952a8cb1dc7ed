import './plain-table.css';
import type { ComponentChildren } from 'preact';

interface PlainTableProps {
  readonly caption: string;
  /** What each row is, then what each of its figures is. */
  readonly columns: readonly [row: string, ...figures: string[]];
  readonly rows: readonly PlainRow[];
}

export interface PlainRow {
  readonly key: string | number;
  readonly head: ComponentChildren;
  readonly figures: readonly (string | number)[];
}

/** A ruled table: a row for each thing, figures to the right of it. */
export function PlainTable({ caption, columns: [row, ...figures], rows }: PlainTableProps) {
  return (
    <div class="wide-table">
      <table class="plain-table">
        <caption class="small soft">{caption}</caption>
        <thead>
          <tr>
            <th scope="col">{row}</th>
            {figures.map((figure) => (
              <th key={figure} scope="col" class="number">
                {figure}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ key, head, figures: said }) => (
            <tr key={key}>
              <th scope="row">{head}</th>
              {said.map((figure, at) => (
                <td key={figures[at]} class="number figures">
                  {figure}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
