import { useEffect, useState } from 'preact/hooks';
import { FilePicker } from '../../parts/FilePicker/file-picker.tsx';
import {
  type BackupFailure,
  backUp,
  bringIn,
  type OpenConflict,
  openConflicts,
  settleConflict,
} from '../../state/back-up.ts';
import { handOver } from '../../state/hand-over.ts';
import { nameField, nameRecord, sayValue, BACKUP_WORDS as WORDS } from '../../words/backup.ts';
import { describeBytes } from '../../words/bytes.ts';
import { dayOf, describeDayAndYear } from '../../words/dates.ts';

type State =
  | { readonly now: 'idle' | 'busy' | 'done'; readonly says?: string }
  | { readonly now: 'failed'; readonly says: string };

/** Writes everything to one file, reads one back, and lets conflicts be settled. */
export function BackupPart() {
  const [state, setState] = useState<State>({ now: 'idle' });
  const [conflicts, setConflicts] = useState<readonly OpenConflict[]>([]);
  const look = (): void => void openConflicts().then(setConflicts, () => setConflicts([]));
  useEffect(look, []);

  const write = async (): Promise<void> => {
    setState({ now: 'busy', says: WORDS.beginning });
    const done = await backUp(({ pictures, picturesNamed }) =>
      setState({ now: 'busy', says: WORDS.writing(pictures, picturesNamed) }),
    );
    if (!done.ok) return setState({ now: 'failed', says: WORDS.notWritten });
    const { file, manifest, leftOut } = done;
    handOver(file, `bedside-garden-${dayOf(new Date())}.zip`);
    setState({
      now: 'done',
      says: WORDS.written(manifest.records, manifest.pictures, describeBytes(file.size), leftOut),
    });
  };
  const read = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    setState({ now: 'busy', says: WORDS.reading });
    const done = await bringIn(file);
    if (!done.ok) return setState({ now: 'failed', says: WORDS.failed[done.why satisfies BackupFailure] });
    const { added, changed, same, pictures } = done.report;
    setState({ now: 'done', says: WORDS.merged(added, changed, same, pictures) });
    look();
  };
  return (
    <section class="stack-close" aria-labelledby="backup">
      <h2 id="backup">{WORDS.title}</h2>
      <p>{WORDS.lead}</p>
      <p class="backup-actions">
        <button type="button" class="button" disabled={state.now === 'busy'} onClick={() => void write()}>
          {WORDS.write}
        </button>
        <FilePicker
          class="button"
          label={WORDS.read}
          accept=".zip,application/zip"
          onAdd={([file]) => void read(file)}
        >
          {WORDS.read}
        </FilePicker>
      </p>
      <p role="status">{state.now !== 'failed' && state.says}</p>
      <p role="alert">{state.now === 'failed' && state.says}</p>
      <p class="small soft">{WORDS.private}</p>
      {conflicts.length > 0 && <Conflicts conflicts={conflicts} onSettled={look} />}
    </section>
  );
}

interface ConflictsProps {
  readonly conflicts: readonly OpenConflict[];
  readonly onSettled: () => void;
}

function Conflicts({ conflicts, onSettled }: ConflictsProps) {
  const [failed, setFailed] = useState(false);
  const choose = async (open: OpenConflict, value: unknown): Promise<void> => {
    setFailed(!(await settleConflict(open, value)));
    onSettled();
  };
  return (
    <div class="stack-close">
      <h3>{WORDS.conflicts}</h3>
      <p>{WORDS.conflictsLead}</p>
      <p role="alert">{failed && WORDS.notSettled}</p>
      <ul class="conflicts">
        {conflicts.map((open) => (
          <Choice
            key={`${open.record.kind} ${open.record.id} ${open.conflict.path}`}
            open={open}
            onChoose={(value) => void choose(open, value)}
          />
        ))}
      </ul>
    </div>
  );
}

function Choice({
  open: {
    record,
    conflict: { path, shown, others },
  },
  onChoose,
}: {
  readonly open: OpenConflict;
  readonly onChoose: (value: unknown) => void;
}) {
  const values = [
    { says: WORDS.shown, value: shown },
    ...others.map(({ edit, value }) => ({ says: WORDS.other(describeDayAndYear(edit.at)), value })),
  ];
  const what = `${nameRecord(record)}, ${nameField(path, record)}`;
  return (
    <li class="conflict">
      <p>
        <strong>{what}</strong>
      </p>
      {values.map(({ says, value }, at) => (
        <p key={says + String(at)} class="conflict-value">
          <span>
            <span class="small soft">{says}: </span>
            {sayValue(path, value, record)}
          </span>
          <button
            type="button"
            class="button"
            aria-label={`${WORDS.choose}: ${what}, ${sayValue(path, value, record)}`}
            onClick={() => onChoose(value)}
          >
            {WORDS.choose}
          </button>
        </p>
      ))}
    </li>
  );
}
