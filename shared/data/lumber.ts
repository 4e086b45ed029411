/*
 * Sizes in inches, as the standards print them. What is sold may be a little larger: these are the least.
 */

/** A softwood size by its name: the least dressed size dry (19 % of moisture or less) and green [in]. */
export interface DressedSize {
  readonly nominal: string
  readonly dry: number
  readonly green: number
}

/** A hardwood thickness: rough, and surfaced on two sides [in]. From an inch up the yard calls it by its quarters. */
export interface HardwoodThickness {
  readonly nominal: string
  readonly rough: number
  readonly surfaced: number
}

/** PS 20, Table 3, boards: thickness. */
export const BOARD_THICKNESSES: readonly DressedSize[] = [
  { nominal: '3/8', dry: 0.3125, green: 0.34375 },
  { nominal: '1/2', dry: 0.4375, green: 0.46875 },
  { nominal: '5/8', dry: 0.5625, green: 0.59375 },
  { nominal: '3/4', dry: 0.625, green: 0.6875 },
  { nominal: '1', dry: 0.75, green: 0.78125 },
  { nominal: '1 1/4', dry: 1.0, green: 1.03125 },
  { nominal: '1 1/2', dry: 1.25, green: 1.28125 },
]

/** PS 20, Table 3, boards: width. */
export const BOARD_WIDTHS: readonly DressedSize[] = [
  { nominal: '2', dry: 1.5, green: 1.5625 },
  { nominal: '3', dry: 2.5, green: 2.5625 },
  { nominal: '4', dry: 3.5, green: 3.5625 },
  { nominal: '5', dry: 4.5, green: 4.625 },
  { nominal: '6', dry: 5.5, green: 5.625 },
  { nominal: '7', dry: 6.5, green: 6.625 },
  { nominal: '8', dry: 7.25, green: 7.5 },
  { nominal: '9', dry: 8.25, green: 8.5 },
  { nominal: '10', dry: 9.25, green: 9.5 },
  { nominal: '11', dry: 10.25, green: 10.5 },
  { nominal: '12', dry: 11.25, green: 11.5 },
  { nominal: '14', dry: 13.25, green: 13.5 },
  { nominal: '16', dry: 15.25, green: 15.5 },
]

/** PS 20, Table 3, dimension lumber: thickness. */
export const DIMENSION_THICKNESSES: readonly DressedSize[] = [
  { nominal: '2', dry: 1.5, green: 1.5625 },
  { nominal: '2 1/2', dry: 2.0, green: 2.0625 },
  { nominal: '3', dry: 2.5, green: 2.5625 },
  { nominal: '3 1/2', dry: 3.0, green: 3.0625 },
  { nominal: '4', dry: 3.5, green: 3.5625 },
  { nominal: '4 1/2', dry: 4.0, green: 4.0625 },
]

/** PS 20, Table 3, dimension lumber: width. */
export const DIMENSION_WIDTHS: readonly DressedSize[] = [
  { nominal: '2', dry: 1.5, green: 1.5625 },
  { nominal: '2 1/2', dry: 2.0, green: 2.0625 },
  { nominal: '3', dry: 2.5, green: 2.5625 },
  { nominal: '3 1/2', dry: 3.0, green: 3.0625 },
  { nominal: '4', dry: 3.5, green: 3.5625 },
  { nominal: '4 1/2', dry: 4.0, green: 4.0625 },
  { nominal: '5', dry: 4.5, green: 4.625 },
  { nominal: '6', dry: 5.5, green: 5.625 },
  { nominal: '8', dry: 7.25, green: 7.5 },
  { nominal: '10', dry: 9.25, green: 9.5 },
  { nominal: '12', dry: 11.25, green: 11.5 },
  { nominal: '14', dry: 13.25, green: 13.5 },
  { nominal: '16', dry: 15.25, green: 15.5 },
]

/** NHLA, standard thickness of hardwood surfaced on two sides (10/4 from memory). Boards come in random widths. */
export const HARDWOOD_THICKNESSES: readonly HardwoodThickness[] = [
  { nominal: '3/8', rough: 0.375, surfaced: 0.1875 },
  { nominal: '1/2', rough: 0.5, surfaced: 0.3125 },
  { nominal: '5/8', rough: 0.625, surfaced: 0.4375 },
  { nominal: '3/4', rough: 0.75, surfaced: 0.5625 },
  { nominal: '4/4', rough: 1.0, surfaced: 0.8125 },
  { nominal: '5/4', rough: 1.25, surfaced: 1.0625 },
  { nominal: '6/4', rough: 1.5, surfaced: 1.3125 },
  { nominal: '7/4', rough: 1.75, surfaced: 1.5 },
  { nominal: '8/4', rough: 2.0, surfaced: 1.75 },
  { nominal: '10/4', rough: 2.5, surfaced: 2.25 },
  { nominal: '12/4', rough: 3.0, surfaced: 2.75 },
  { nominal: '14/4', rough: 3.5, surfaced: 3.25 },
  { nominal: '16/4', rough: 4.0, surfaced: 3.75 },
]
