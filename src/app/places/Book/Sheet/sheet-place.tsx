import type { SheetKind } from '../../../state/route.ts';
import { BedSheet } from './bed-sheet.tsx';
import { CaseSheet } from './case-sheet.tsx';
import { PotsSheet } from './pots-sheet.tsx';
import { TrialSheet } from './trial-sheet.tsx';

interface SheetPlaceProps {
  readonly sheet: SheetKind;
  readonly of: string;
  readonly year: string | undefined;
}

/** The sheet that was asked for. */
export function SheetPlace({ sheet, of, year }: SheetPlaceProps) {
  switch (sheet) {
    case 'case':
      return <CaseSheet caseId={of} />;
    case 'bed':
      return <BedSheet bedId={of} year={year} />;
    case 'trial':
      return <TrialSheet trialId={of} />;
    case 'pots':
      return <PotsSheet testId={of} />;
  }
}
