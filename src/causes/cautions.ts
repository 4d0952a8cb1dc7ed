/** Cautions that travel with causes and courses. The usual ones; local rules and licensed advice come first. */
export const CAUTIONS = {
  residue:
    'Until the supplier or the authority has answered, do not spread, sell or pass on the load, and do not eat from plants it has hurt. Report it where your country collects such reports.',
  drift:
    'Photograph it today; note the wind, and who sprayed what and when. Do not eat from these plants until you know what it was. Report it where your country collects such reports.',
  'local-rules': 'Rules on residues, manure and waste differ from place to place: follow yours.',
  'do-not-compost':
    'Do not put these plants on your own compost heap or use them as mulch; follow the local rules for plant waste.',
  notifiable:
    'Some diseases and pests must be reported in some countries. If in doubt ask the plant health authority before moving anything.',
  sprays:
    'Should you think of spraying: even soap kills ladybirds and the other hunters. Read the label of any product first, keep to local rules and ask a licensed adviser; never spray open flowers.',
  'slug-bait':
    'Baits harm other animals: only products allowed where you live, exactly by the label, away from children and pets.',
  feeds: 'Feed only by the label of the product; more does not help and burns roots.',
  'soil-test': 'Leaves alone do not prove a shortage: a soil test costs little and saves a wrong feed.',
  lime: 'Lime irritates eyes and skin: wear gloves and goggles and keep it off leaves.',
  'compost-dust':
    'Compost dust and mould spores can make people ill: moisten the compost, wear gloves and a dust mask, wash hands afterwards.',
  'fresh-manure': 'Keep raw manure away from crops that are eaten raw; follow the local waiting times.',
  ask: 'Not sure enough to risk the crop? Take a sample to an advisory service or plant clinic.',
} as const satisfies Record<string, string>;

export type CautionId = keyof typeof CAUTIONS;
