/**
 * Between which two places a condition ends, by halving the stretch on which it does.
 *
 * @param holds must hold from `from` on up to some place, and not beyond it; it is not asked at the ends
 * @param from where it holds, below or above `to`
 * @param to where it does not
 * @param halvings how often the stretch is halved, whole, 0 or above: each adds a binary place
 * @returns the last place that is known to be before the end, and the first that is known to be beyond it
 */
export function endByHalving(
  holds: (x: number) => boolean,
  from: number,
  to: number,
  halvings: number,
): readonly [before: number, beyond: number] {
  let [before, beyond] = [from, to]
  for (let halving = 0; halving < halvings; halving++) {
    const middle = (before + beyond) / 2
    if (holds(middle)) before = middle
    else beyond = middle
  }
  return [before, beyond]
}
