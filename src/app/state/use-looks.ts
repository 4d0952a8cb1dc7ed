import { useEffect, useState } from 'preact/hooks';
import type { CaseRecord } from '../../garden/records.ts';
import { cases, type KeptLook, store, tryRead } from './kept.ts';

/** The looks of a case, oldest first, read when its page is opened and when the case changes; `undefined` until then. */
export function useLooks(caseId: string): readonly KeptLook[] | undefined {
  const changedAt = cases.value?.find(({ id }) => id === caseId)?.changedAt ?? '';
  return useLooksOf([{ id: caseId, changedAt }])?.get(caseId);
}

/** The looks of several cases by the case's id, oldest first; `undefined` until all are read. */
export function useLooksOf(
  cases: readonly Pick<CaseRecord, 'id' | 'changedAt'>[],
): ReadonlyMap<string, readonly KeptLook[]> | undefined {
  const [looks, setLooks] = useState<ReadonlyMap<string, readonly KeptLook[]> | undefined>(undefined);
  const wanted = cases.map(({ id, changedAt }) => `${id} ${changedAt}`).join('\n');
  useEffect(() => {
    let left = false;
    const read = cases.map(async ({ id }) => {
      const found = await tryRead(() => store.listLooks(id));
      return [id, (found as KeptLook[] | undefined) ?? []] as const;
    });
    void Promise.all(read).then((all) => {
      if (!left) setLooks(new Map(all));
    });
    return () => {
      left = true;
    };
  }, [wanted]);
  return looks;
}
