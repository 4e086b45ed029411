import { requireWhole } from '#shared/precondition.ts'

/**
 * Travel of an inner ring towards one of Z balls that stand evenly round it, and straight away from that ball again, over the
 * diametral clearance Gr:  1 for even Z, (1 + 1 / cos(π / Z)) / 2 for odd Z. Three balls give 1.5.
 *
 * With the clearance c = Gr / 2 on each side, displacement e keeps e · u ≤ c for the direction u of every ball. Towards a ball
 * that ends at c. Straight away from it an even ring has a ball too; an odd one has two, each π / Z beside that way, and the
 * ring comes between them until e cos(π / Z) = c. On either end it may also slide across: that does not change its travel this
 * way, while travel across would. Exact as Gr goes to 0: with three balls 1.5 % more at Gr = 0.6 on a circle of 44.
 *
 * @param ballCount Z, whole, at least 3
 * @throws RangeError outside that range
 */
export function travelTowardsBall(ballCount: number): number {
  requireWhole('ballCount', ballCount, 3)
  return ballCount % 2 === 0 ? 1 : (1 + 1 / Math.cos(Math.PI / ballCount)) / 2
}
