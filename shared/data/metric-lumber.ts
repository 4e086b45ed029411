/*
 * Sawn sizes in countries that saw in millimetres, at 20 % of moisture. Mills differ, and none saws them all.
 */

/** Thicknesses of hardwood [mm]: EN 1313-2, from memory. */
export const METRIC_HARDWOOD_THICKNESSES: readonly number[] = [20, 27, 32, 40, 50, 60, 65, 70, 80, 100]
/** Thicknesses of softwood [mm]: EN 1313-1 and Nordic sawmills, from memory. */
export const METRIC_SOFTWOOD_THICKNESSES: readonly number[] = [19, 22, 25, 32, 38, 44, 50, 63, 75, 100]
/** Widths of softwood [mm]: EN 1313-1 and Nordic sawmills, from memory. */
export const METRIC_SOFTWOOD_WIDTHS: readonly number[] = [75, 100, 125, 150, 175, 200, 225]

/** Loss of a sawn board until it is dry and planed on both sides, in thickness or in width [mm]: common practice, no source. */
export const METRIC_PLANING = 5
