import { checksExist } from './checks-exist.ts';
import { change, tryRule } from './rule.ts';

tryRule(checksExist, [
  {
    breaks: 'a single check',
    by: change('aphids', ({ checks }) => ({ checks: checks.slice(0, 1) })),
    complaint: /aphids: has 1 checks/,
  },
  {
    breaks: 'a result without a meaning',
    by: change('rust', ({ checks }) => ({ checks: checks.map((check) => ({ ...check, ifNotFound: 'no' })) })),
    complaint: /rust: .* does not say/,
  },
  {
    breaks: 'a check that no cause uses any more',
    by: (causes) =>
      causes.map((cause) => ({ ...cause, checks: cause.checks.filter(({ check }) => check !== 'pot-test') })),
    complaint: /pot-test: of use to no cause/,
  },
]);
