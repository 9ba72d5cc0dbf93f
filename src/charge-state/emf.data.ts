/**
 * Cell EMF at 25 °C, V, coefficients of log10(molality)^0..4, range 0.1-8 mol/kg. Source "bode-1977", full digits
 * from memory; the two electrodes, read in rounded form, add up to the same within 0.6 mV.
 */
export const bode = [1.922, 0.147519, 0.063552, 0.073772, 0.033612] as const;
export const MIN_MOLALITY = 0.1;
export const MAX_MOLALITY = 8;
