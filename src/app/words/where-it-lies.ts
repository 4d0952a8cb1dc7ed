/** What to grow, and not to grow, where a load lies that may carry weedkiller. The pots and the load itself say the same. */
export const WHERE_IT_LIES =
  'Where it lies already: no beans, peas, potatoes, tomatoes or lettuce there. Sweetcorn and other grasses bear it. Dig and air the soil, and sow beans in it before you trust it again.';
