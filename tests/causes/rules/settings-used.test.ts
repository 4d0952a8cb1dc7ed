import { tryRule } from './rule.ts';
import { settingsUsed } from './settings-used.ts';

tryRule(settingsUsed, [
  {
    breaks: 'a question that moves nothing',
    by: (causes) =>
      causes.map((cause) => ({
        ...cause,
        leanings: cause.leanings.filter(({ when }) => !('setting' in when && when.setting === 'hay-source')),
      })),
    complaint: /hay-source: tells nothing/,
  },
  {
    breaks: 'a compost that may be named for nothing',
    by: (causes) =>
      causes.map((cause) => ({
        ...cause,
        leanings: cause.leanings.filter(({ when }) => !('setting' in when && when.is === 'leaf-mould')),
      })),
    complaint: /compost-kinds: naming leaf-mould tells nothing/,
  },
]);
