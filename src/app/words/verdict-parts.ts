export const VERDICT_PART_WORDS = {
  byThen: 'By then',
  afterThat: 'After that',
  enterCheck: 'Enter what you find',
  sowPots: 'Plan the pots',
  why: 'Why',
  alsoDo: 'Also',
  meanwhile: 'Meanwhile',
  ifItComesToIt: 'If it comes to it',
  change: 'What would change it',
  cautions: 'Mind',
  elsewhere: 'What would help',
} as const;
