import type { SignId } from '../../../src/signs/vocabulary.ts';

/** Signs that fewer than two causes explain, each with the reason why that is right. */
export const SIGNS_OF_ONE_CAUSE: { readonly [Sign in SignId]?: string } = {
  'white-powder@new': 'only powdery mildew dusts the newest leaves; lime and dust are in the background rate',
  'rust-pustules@new': 'nothing else raises dusty spots on new leaves',
  slime: 'a trace of slugs and snails alone; crossing a bed without eating is in the background rate',
  'slugs-seen': 'they are the cause itself; merely living there is in the background rate',
  'bird-droppings': 'a trace of birds alone; perching without eating is in the background rate',
  'after-spray': 'a plant hurt by a soap or feed spray has no cause of its own here; something else takes it',
  'pot-test-injury': 'the test is made to show this one thing; bad pots are in the background rate',
};
