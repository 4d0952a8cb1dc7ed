import { useEffect, useState } from 'preact/hooks';
import { cases, type KeptLook, store, tryRead } from './kept.ts';

/** The looks of a case, oldest first, read when its page is opened and when the case changes; `undefined` until then. */
export function useLooks(caseId: string): readonly KeptLook[] | undefined {
  const [looks, setLooks] = useState<readonly KeptLook[] | undefined>(undefined);
  const changedAt = cases.value?.find(({ id }) => id === caseId)?.changedAt;
  useEffect(() => {
    let left = false;
    void tryRead(() => store.listLooks(caseId)).then((found) => {
      if (!left) setLooks((found as KeptLook[] | undefined) ?? []);
    });
    return () => {
      left = true;
    };
  }, [caseId, changedAt]);
  return looks;
}
